using System.Data.Common;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.Persistence.RunFigures;

namespace WeldTrace.Persistence;

/// <summary>All records of the site. Saving writes each changed record together with its ledger entry, or nothing.</summary>
public sealed class WeldTraceDbContext(DbContextOptions<WeldTraceDbContext> options)
    : IdentityUserContext<Account, Guid>(options)
{
    private readonly List<ProcessLogCopy> _copies = [];

    /// <summary>Tables to which the application's role may only add.</summary>
    public static IReadOnlyCollection<string> AppendOnlyTables { get; } =
    [
        "ledger_entries",
        "ledger_nodes",
        "checkpoints",
        "checkpoint_stamps",
        "signatures",
        "step_sign_offs",
        "heat_treatments",
        "joint_cleanings",
        "joint_fit_ups",
        "specimen_tests",
        "laboratory_tests",
        "production_tests",
        "signal_reviews",
        "vessel_archives",
        "attachments",
        "process_logs",
        "process_log_chunks",
        "process_log_levels",
    ];

    public DbSet<Site> Sites => Set<Site>();
    public DbSet<Person> People => Set<Person>();
    public DbSet<ProcedureRevision> ProcedureRevisions => Set<ProcedureRevision>();
    public DbSet<VesselDesign> VesselDesigns => Set<VesselDesign>();
    public DbSet<ToolDesign> ToolDesigns => Set<ToolDesign>();
    public DbSet<Tool> Tools => Set<Tool>();
    public DbSet<LimitTable> LimitTables => Set<LimitTable>();
    public DbSet<QualificationRecord> Qualifications => Set<QualificationRecord>();
    public DbSet<TestPiece> TestPieces => Set<TestPiece>();
    public DbSet<SpecimenTest> SpecimenTests => Set<SpecimenTest>();
    public DbSet<Certificate> Certificates => Set<Certificate>();
    public DbSet<Instrument> Instruments => Set<Instrument>();
    public DbSet<Machine> Machines => Set<Machine>();
    public DbSet<MaterialLot> MaterialLots => Set<MaterialLot>();
    public DbSet<CutComponent> Components => Set<CutComponent>();
    public DbSet<HeatTreatment> HeatTreatments => Set<HeatTreatment>();
    public DbSet<JointCleaning> JointCleanings => Set<JointCleaning>();
    public DbSet<JointFitUp> JointFitUps => Set<JointFitUp>();
    public DbSet<Vessel> Vessels => Set<Vessel>();
    public DbSet<ProductionLot> ProductionLots => Set<ProductionLot>();
    public DbSet<ProductionTest> ProductionTests => Set<ProductionTest>();
    public DbSet<WeldRun> WeldRuns => Set<WeldRun>();
    public DbSet<SignalReview> SignalReviews => Set<SignalReview>();
    public DbSet<VesselArchive> VesselArchives => Set<VesselArchive>();
    public DbSet<Concession> Concessions => Set<Concession>();
    public DbSet<LeakTest> LeakTests => Set<LeakTest>();
    public DbSet<PressureTest> PressureTests => Set<PressureTest>();
    public DbSet<SectionExamination> Sections => Set<SectionExamination>();
    public DbSet<LaboratoryTest> LaboratoryTests => Set<LaboratoryTest>();
    public DbSet<StepSignOff> StepSignOffs => Set<StepSignOff>();
    public DbSet<Finding> Findings => Set<Finding>();
    public DbSet<SystemToken> SystemTokens => Set<SystemToken>();
    public DbSet<SharedTablet> SharedTablets => Set<SharedTablet>();
    public DbSet<AccountSession> AccountSessions => Set<AccountSession>();
    public DbSet<AccountPin> AccountPins => Set<AccountPin>();
    public DbSet<Signature> Signatures => Set<Signature>();
    public DbSet<SigningKey> SigningKeys => Set<SigningKey>();
    public DbSet<Attachment> Attachments => Set<Attachment>();
    public DbSet<RunFigureRow> RunFigures => Set<RunFigureRow>();
    public DbSet<ProcessLogRow> ProcessLogs => Set<ProcessLogRow>();
    public DbSet<ProcessLogChunkRow> ProcessLogChunks => Set<ProcessLogChunkRow>();
    public DbSet<ProcessLogLevelRow> ProcessLogLevels => Set<ProcessLogLevelRow>();
    public DbSet<LedgerRow> LedgerEntries => Set<LedgerRow>();
    public DbSet<LedgerNodeRow> LedgerNodes => Set<LedgerNodeRow>();
    public DbSet<LedgerHead> LedgerHeads => Set<LedgerHead>();
    public DbSet<CheckpointRow> Checkpoints => Set<CheckpointRow>();
    public DbSet<CheckpointStampRow> CheckpointStamps => Set<CheckpointStampRow>();

    public override int SaveChanges(bool acceptAllChangesOnSuccess) =>
        throw new NotSupportedException("Save asynchronously.");

    public override Task<int> SaveChangesAsync(
        bool acceptAllChangesOnSuccess,
        CancellationToken cancellationToken = default
    )
    {
        var records = ChangedRecords.Of(ChangeTracker);
        return records.IsEmpty && _copies.Count == 0
            ? base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken)
            : SaveWithLedgerAsync(records, cancellationToken);
    }

    /// <summary>Where archived bundles are; null when this context was not told.</summary>
    public ArchiveFolder? Archive { get; } = options.FindExtension<ArchiveOption>()?.Folder;

    /// <summary>The common answer of the queries that are asked in one round trip, while it is read.</summary>
    internal DbDataReader? Answering { get; set; }

    /// <summary>Samples to be written in the transaction of the next save.</summary>
    internal void CopyWithNextSave(ProcessLogCopy copy) => _copies.Add(copy);

    /// <summary>Work that the next save waits for, before it takes its place in the line of writers.</summary>
    internal Task? Meanwhile { get; set; }

    private async Task<int> SaveWithLedgerAsync(
        ChangedRecords records,
        CancellationToken cancellation
    )
    {
        AttachmentCopy? files = Meanwhile is null ? null : AttachmentCopy.Of(ChangeTracker);
        var written = await LedgerSave.RunAsync(
            this,
            records,
            token => WriteAheadAsync(files, token),
            token => base.SaveChangesAsync(false, token),
            cancellation
        );
        _copies.Clear();
        return written;
    }

    // Whatever needs no number in the ledger is written while nobody waits in the line.
    private async Task WriteAheadAsync(AttachmentCopy? files, CancellationToken cancellation)
    {
        var connection = (NpgsqlConnection)Database.GetDbConnection();
        foreach (var copy in _copies)
        {
            await copy.WriteAsync(connection, cancellation);
        }

        if (files is not null)
        {
            await files.WriteAsync(connection, cancellation);
        }

        if (Meanwhile is not null)
        {
            await Meanwhile;
        }
    }

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.Ignore<Record>();
        builder.Ignore<TestRecord>();
        builder.Entity<IdentityUserClaim<Guid>>().ToTable("account_claims");
        builder.Entity<IdentityUserLogin<Guid>>().ToTable("account_logins");
        builder.Entity<IdentityUserToken<Guid>>().ToTable("account_tokens");
        builder.ApplyConfigurationsFromAssembly(typeof(WeldTraceDbContext).Assembly);
    }
}
