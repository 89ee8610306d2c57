using Microsoft.EntityFrameworkCore;
using Npgsql;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;

namespace WeldTrace.Persistence;

/// <summary>A form that knows which version of a record its writer was looking at.</summary>
public interface IShownVersion
{
    /// <summary>Version of the record when the form was shown; null for a new record.</summary>
    int? Version { get; set; }
}

/// <summary>Saves, and tells a lost race or a taken name as a refusal that a person can act on.</summary>
public static class Saving
{
    /// <summary>Code of a refusal that says that somebody else was faster.</summary>
    public const string LostRace = "lost-race";

    private const string AnotherTest =
        "Somebody else recorded a test of this step just now; open it and look first. Your entry is kept below.";

    private static readonly Dictionary<string, string> UniqueSentences = new()
    {
        ["ix_leak_tests_one_unsigned"] = AnotherTest,
        ["ix_pressure_tests_one_unsigned"] = AnotherTest,
        ["ix_sections_one_unsigned"] = AnotherTest,
        ["ix_vessels_serial"] =
            "This serial number exists already; a serial is given once. Check the number.",
        ["ix_production_lots_number"] =
            "A production lot of this number exists already; choose another number.",
        ["ix_tools_mark"] = "This tool mark exists already; a mark is given once. Check the mark.",
        ["ix_concessions_one_open"] =
            "Somebody else asked for the same concession just now; look at it, and sign or decline that one.",
        ["ix_certificates_number"] =
            "A certificate of this number is entered already; check the number.",
        ["ix_instruments_mark"] = "An instrument of this mark is entered already; check the mark.",
        ["ix_machines_name"] = "A machine of this name exists already; choose another name.",
        ["ix_material_lots_number"] = "This lot number exists already; check the number.",
        ["ix_components_serial"] =
            "A component of this serial is entered already; a serial is given once. Check the serials.",
        ["ix_heat_treatments_number"] =
            "A furnace load of this number is entered already; check the number.",
        ["ix_people_sign_in_name"] = "This sign-in name is taken; choose another.",
        ["ix_tool_designs_number_revision_index"] =
            "This revision of the tool drawing exists already.",
        ["ix_procedure_revisions_number_revision_index"] =
            "This procedure number and revision exist already; choose another number, or revise the existing one.",
        ["ix_procedure_revisions_one_released"] =
            "Another revision of this procedure was released just now; open it and look first.",
        ["ix_qualifications_number"] =
            "A qualification record of this number exists already; choose another number.",
        ["ix_test_pieces_one_welding"] =
            "Another test piece of this qualification was begun just now; look first.",
        ["ix_specimen_tests_piece_id_planned_id_attempt"] =
            "Somebody else entered this result just now; look first. Your entry is kept below.",
        ["ix_limit_tables_code_edition"] =
            "A table of this code and edition exists already; choose another code, or make a new edition of that table.",
        ["ix_vessel_designs_number_revision_index"] =
            "This drawing number and revision exist already; choose another number, or revise the existing one.",
    };

    public static async Task<Outcome> SaveAsync(
        this WeldTraceDbContext db,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        try
        {
            await db.SaveChangesAsync(cancellation);
            return Outcome.Accepted;
        }
        catch (DbUpdateConcurrencyException race)
        {
            return await TellRaceAsync(
                db,
                [.. race.Entries.Select(e => e.Entity).OfType<Record>()],
                cancellation
            );
        }
        catch (Exception failure) when (UniqueViolation(failure) is { } violation)
        {
            return violation.ConstraintName is "ix_ledger_entries_record_id_record_version" or null
                ? await TellRaceAsync(
                    db,
                    [.. db.ChangeTracker.Entries<Record>().Select(e => e.Entity)],
                    cancellation
                )
                : Outcome.Refused(
                    "exists",
                    UniqueSentences.GetValueOrDefault(
                        violation.ConstraintName,
                        "This was recorded already; look before you enter it again."
                    )
                );
        }
        catch (Exception failure) when (IsDiskFull(failure))
        {
            return Outcome.Refused(
                "disk-full",
                "The disk of the server is full, so nothing was saved. Your entry is still here: make room on the disk, then save again."
            );
        }
    }

    /// <summary>
    /// Saves what <paramref name="meanwhile"/> accepts. New files are written at once, in the same transaction, while that work goes on; when it
    /// refuses, nothing is saved.
    /// </summary>
    public static async Task<Outcome> SaveAsync(
        this WeldTraceDbContext db,
        Task<Outcome> meanwhile,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(meanwhile);
        db.Meanwhile = RequireAsync(meanwhile);
        try
        {
            return await db.SaveAsync(cancellation);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            var outcome = await meanwhile;
            if (outcome.IsAccepted)
            {
                throw;
            }

            return outcome;
        }
        finally
        {
            db.Meanwhile = null;
        }
    }

    // A refusal ends the transaction like a cancelled save.
    private static async Task RequireAsync(Task<Outcome> work)
    {
        if (await work is { IsAccepted: false })
        {
            throw new OperationCanceledException();
        }
    }

    /// <summary>
    /// Saves an edit only when nobody has changed the record since its form was shown. After a lost race the form knows the
    /// new version, so that whoever has read the warning may save again.
    /// </summary>
    public static async Task<Outcome> SaveEditAsync(
        this WeldTraceDbContext db,
        Record record,
        IShownVersion form,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(form);
        if (form.Version is { } shown)
        {
            db.Entry(record).Property(nameof(Record.Version)).OriginalValue = shown;
        }

        var outcome = await db.SaveAsync(cancellation);
        if (form.Version is not null && outcome.Refusals.Any(r => r.Code == LostRace))
        {
            form.Version = await db
                .LedgerEntries.Where(e => e.RecordId == record.Id)
                .MaxAsync(e => e.RecordVersion, cancellation);
        }

        return outcome;
    }

    private static async Task<Outcome> TellRaceAsync(
        WeldTraceDbContext db,
        IReadOnlyList<Record> records,
        CancellationToken cancellation
    )
    {
        db.ChangeTracker.Clear();
        var ids = records.Select(r => r.Id).ToList();
        var rows = await db
            .LedgerEntries.AsNoTracking()
            .Where(e => ids.Contains(e.RecordId))
            .OrderByDescending(e => e.Number)
            .Take(1)
            .ToListAsync(cancellation);
        var label = records.Count > 0 ? records[0].Label : "The record";
        if (rows.Count == 0)
        {
            return Outcome.Refused(
                LostRace,
                $"{label} was saved by someone else at the same moment. Your entry is kept below; look at the record, then save again."
            );
        }

        var entry = LedgerEntry.FromCanonicalBytes(
            System.Text.Encoding.UTF8.GetBytes(rows[0].Entry)
        );
        return Outcome.Refused(
            LostRace,
            FormattableString.Invariant(
                $"{entry.ActorName} changed {label} while you were working: {entry.Act}, {entry.At:yyyy-MM-dd HH:mm:ss} UTC (version {entry.RecordVersion}). Your entry is kept below and was not saved; look at the record as it is now, then save again."
            )
        );
    }

    private static PostgresException? UniqueViolation(Exception failure) =>
        Inner<PostgresException>(failure)
            is { SqlState: PostgresErrorCodes.UniqueViolation } violation
            ? violation
            : null;

    private static bool IsDiskFull(Exception failure) =>
        Inner<PostgresException>(failure) is { SqlState: PostgresErrorCodes.DiskFull };

    private static T? Inner<T>(Exception? failure)
        where T : Exception
    {
        for (; failure is not null; failure = failure.InnerException)
        {
            if (failure is T found)
            {
                return found;
            }
        }

        return null;
    }
}
