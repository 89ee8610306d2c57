namespace WeldTrace.Persistence.Migrations;

/// <summary>The database itself refuses to change what is signed, whoever asks: the program's own rules are not the only guard.</summary>
internal static class SealedRecords
{
    public const string Up = """
        CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
            RAISE EXCEPTION 'A signed record of % is never changed or deleted; write a new version.', TG_TABLE_NAME
                USING ERRCODE = 'restrict_violation';
        END $$;

        CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON weld_runs
            FOR EACH ROW WHEN (OLD.signed_at IS NOT NULL) EXECUTE FUNCTION refuse_change();
        CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON leak_tests
            FOR EACH ROW WHEN (OLD.signed_at IS NOT NULL OR OLD.withdrawal IS NOT NULL) EXECUTE FUNCTION refuse_change();
        CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON pressure_tests
            FOR EACH ROW WHEN (OLD.signed_at IS NOT NULL OR OLD.withdrawal IS NOT NULL) EXECUTE FUNCTION refuse_change();
        CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON sections
            FOR EACH ROW WHEN (OLD.signed_at IS NOT NULL OR OLD.withdrawal IS NOT NULL) EXECUTE FUNCTION refuse_change();
        CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON findings
            FOR EACH ROW WHEN (OLD.state = 'Closed') EXECUTE FUNCTION refuse_change();
        CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON step_sign_offs
            FOR EACH ROW EXECUTE FUNCTION refuse_change();
        CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON signatures
            FOR EACH ROW EXECUTE FUNCTION refuse_change();

        CREATE TRIGGER frozen BEFORE UPDATE ON procedure_revisions
            FOR EACH ROW WHEN (OLD.state <> 'Draft' AND (OLD.content, OLD.number, OLD.revision_index, OLD.title, OLD.author_id)
                IS DISTINCT FROM (NEW.content, NEW.number, NEW.revision_index, NEW.title, NEW.author_id))
            EXECUTE FUNCTION refuse_change();
        CREATE TRIGGER frozen BEFORE UPDATE ON vessel_designs
            FOR EACH ROW WHEN (OLD.state <> 'Draft' AND (OLD.content, OLD.number, OLD.revision_index, OLD.title, OLD.author_id)
                IS DISTINCT FROM (NEW.content, NEW.number, NEW.revision_index, NEW.title, NEW.author_id))
            EXECUTE FUNCTION refuse_change();
        CREATE TRIGGER kept BEFORE DELETE ON procedure_revisions FOR EACH ROW EXECUTE FUNCTION refuse_change();
        CREATE TRIGGER kept BEFORE DELETE ON vessel_designs FOR EACH ROW EXECUTE FUNCTION refuse_change();

        CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON ledger_entries
            FOR EACH ROW EXECUTE FUNCTION refuse_change();
        CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON ledger_nodes
            FOR EACH ROW EXECUTE FUNCTION refuse_change();
        """;
}
