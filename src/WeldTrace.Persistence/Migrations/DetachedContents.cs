namespace WeldTrace.Persistence.Migrations;

/// <summary>
/// What an archive names leaves the database with the very statement that writes the archive, and in no other way: the
/// application's own role may change neither files nor samples.
/// </summary>
internal static class DetachedContents
{
    public const string Up = """
        CREATE FUNCTION detach_archived() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path FROM CURRENT AS $$
        BEGIN
            UPDATE attachments SET bytes = ''::bytea, archive_id = NEW.id
                WHERE archive_id IS NULL AND sha256 IN (SELECT jsonb_array_elements_text(NEW.files));
            UPDATE process_logs SET archive_id = NEW.id
                WHERE archive_id IS NULL AND run_id IN (SELECT (l ->> 'runId')::uuid FROM jsonb_array_elements(NEW.logs) l);
            DELETE FROM process_log_chunks
                WHERE run_id IN (SELECT run_id FROM process_logs WHERE archive_id = NEW.id);
            RETURN NULL;
        END $$;
        REVOKE ALL ON FUNCTION detach_archived() FROM PUBLIC;

        CREATE TRIGGER detached AFTER INSERT ON vessel_archives
            FOR EACH ROW EXECUTE FUNCTION detach_archived();
        CREATE TRIGGER sealed BEFORE UPDATE OR DELETE ON vessel_archives
            FOR EACH ROW EXECUTE FUNCTION refuse_change();
        """;

    public const string Down = "DROP FUNCTION detach_archived() CASCADE";
}
