using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Archiving;

/// <summary>The bundle that an archive rests on.</summary>
/// <param name="Hash">SHA-256 of the whole file, 64 lower-case hexadecimal digits.</param>
/// <param name="Bytes">Its length, in bytes.</param>
/// <param name="LedgerSize">Entries of the ledger that its proofs lead to.</param>
public sealed record ArchivedBundle(string Hash, long Bytes, long LedgerSize);

/// <summary>A bundle that was read again from the disk and holds.</summary>
/// <param name="Bundle">Hash, length and state of the ledger.</param>
/// <param name="Manifest">What it holds.</param>
public sealed record VerifiedBundle(ArchivedBundle Bundle, BundleManifest Manifest);

/// <summary>
/// The history bundle of a vessel was written and verified, and what is bulky in it has left the database; the records
/// themselves, their signatures and ledger entries stay. Never changed after it is made.
/// </summary>
public sealed class VesselArchive : Record
{
    private VesselArchive(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "vessel-archive";

    /// <inheritdoc/>
    public override string Label => $"{VesselSerial}, archive";

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [VesselId];

    /// <inheritdoc/>
    public override bool IsSealed => Version > 0;

    /// <summary>Vessel.</summary>
    public Guid VesselId { get; private set; }

    /// <summary>Its serial number.</summary>
    public string VesselSerial { get; private set; } = "";

    /// <summary>The bundle; it is kept under the identity of this record.</summary>
    public ArchivedBundle Bundle { get; private set; } = null!;

    /// <summary>SHA-256 of each file whose bytes left the database.</summary>
    public IReadOnlyList<string> Files { get; private set; } = [];

    /// <summary>Process logs whose samples left it.</summary>
    public IReadOnlyList<ArchivedLog> Logs { get; private set; } = [];

    /// <summary>Last day on which the records had to be kept whole.</summary>
    public DateOnly KeptUntil { get; private set; }

    /// <summary>The rule that kept them longest, with its source.</summary>
    public string Rule { get; private set; } = "";

    /// <summary>Printed name of whoever archived it.</summary>
    public string ArchivedBy { get; private set; } = "";

    /// <summary>UTC instant.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>Who may archive.</summary>
    public static Role Archivist => Role.QualityManager;

    /// <summary>Records that a vessel is archived.</summary>
    /// <param name="id">Identity, made when the form was opened, so that a form sent twice is one archive.</param>
    /// <param name="vessel">Vessel.</param>
    /// <param name="retention">How long its records are kept.</param>
    /// <param name="verified">The bundle, written and verified.</param>
    /// <param name="contents">What leaves the database; the bundle must hold all of it.</param>
    /// <param name="lastEntry">Number of the newest ledger entry that speaks of the vessel, from 0; the bundle must know it.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<VesselArchive> Write(
        Guid id,
        Vessel vessel,
        Retention retention,
        VerifiedBundle verified,
        ArchiveContents contents,
        long lastEntry,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(retention);
        ArgumentNullException.ThrowIfNull(verified);
        ArgumentNullException.ThrowIfNull(contents);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Archivist)
            .Add(retention.Against(today))
            .That(
                !contents.IsEmpty,
                "contents",
                $"No file or process log of {vessel.Serial} is in the database; there is nothing to archive."
            )
            .That(
                verified.Manifest.VesselId == vessel.Id,
                "bundle",
                $"The bundle is of {verified.Manifest.VesselSerial} and not of {vessel.Serial}; write the bundle again."
            )
            .That(
                verified.Bundle.LedgerSize > lastEntry,
                "bundle",
                $"Records of {vessel.Serial} were written since; write the bundle again."
            )
            .Add(contents.MissingFrom(verified.Manifest));
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var archive = new VesselArchive(id)
        {
            VesselId = vessel.Id,
            VesselSerial = vessel.Serial,
            Bundle = verified.Bundle,
            Files = contents.Files,
            Logs = contents.Logs,
            KeptUntil = retention.KeptUntil!.Value,
            Rule = $"{retention.Longest.Word}: {retention.Longest.Source}",
            ArchivedBy = actor.PrintedName,
            At = at,
        };
        archive.Note(actor, at, "vessel archived", $"bundle {verified.Bundle.Hash}");
        return archive;
    }
}
