using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WeldTrace.Domain.Access;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.Persistence.RunFigures;

namespace WeldTrace.Persistence.Mappings;

internal sealed class AccountMapping : IEntityTypeConfiguration<Account>
{
    public void Configure(EntityTypeBuilder<Account> builder)
    {
        builder.ToTable("accounts");
        builder.HasIndex(a => a.PersonId).IsUnique();
        builder.Property(a => a.BadgeSha256).HasMaxLength(64).IsFixedLength();
        builder.HasIndex(a => a.BadgeSha256).IsUnique();
    }
}

internal sealed class PasskeyMapping : IEntityTypeConfiguration<IdentityUserPasskey<Guid>>
{
    // A credential's identity has at most 1023 bytes (WebAuthn 3, 4).
    private const int LongestId = 1023;

    public void Configure(EntityTypeBuilder<IdentityUserPasskey<Guid>> builder)
    {
        builder.ToTable("account_passkeys");
        builder.HasKey(p => p.CredentialId);
        builder.Property(p => p.CredentialId).HasMaxLength(LongestId);
        builder.OwnsOne(p => p.Data).ToJson();
        builder.HasOne<Account>().WithMany().HasForeignKey(p => p.UserId);
    }
}

internal sealed class AccountSessionMapping : IEntityTypeConfiguration<AccountSession>
{
    public void Configure(EntityTypeBuilder<AccountSession> builder)
    {
        builder.ToTable("account_sessions");
        builder.Property(s => s.Id).ValueGeneratedNever();
        builder.Property(s => s.Device).HasMaxLength(AccountSession.LongestDevice);
        builder.Property(s => s.Way).IsWord();
        builder.Property(s => s.EndedBecause).HasConversion<string>().HasMaxLength(40);
        builder.HasOne<Account>().WithMany().HasForeignKey(s => s.AccountId);
        builder.HasOne<SharedTablet>().WithMany().HasForeignKey(s => s.TabletId);
        builder.HasIndex(s => s.BegunAt);
        builder.Ignore(s => s.IdleTime);
    }
}

internal sealed class AccountPinMapping : IEntityTypeConfiguration<AccountPin>
{
    public void Configure(EntityTypeBuilder<AccountPin> builder)
    {
        builder.ToTable("account_pins");
        builder.HasKey(p => new { p.AccountId, p.TabletId });
        builder.HasOne<Account>().WithMany().HasForeignKey(p => p.AccountId);
        builder.HasOne<SharedTablet>().WithMany().HasForeignKey(p => p.TabletId);
    }
}

internal sealed class LedgerRowMapping : IEntityTypeConfiguration<LedgerRow>
{
    public void Configure(EntityTypeBuilder<LedgerRow> builder)
    {
        builder.ToTable("ledger_entries");
        builder.HasKey(r => r.Number);
        builder.Property(r => r.Number).ValueGeneratedNever();
        builder.Property(r => r.RecordKind).HasMaxLength(40);
        builder.HasIndex(r => new { r.RecordId, r.RecordVersion }).IsUnique();
        builder.HasIndex(r => r.Vessels).HasMethod("gin");
    }
}

internal sealed class LedgerNodeMapping : IEntityTypeConfiguration<LedgerNodeRow>
{
    public void Configure(EntityTypeBuilder<LedgerNodeRow> builder)
    {
        builder.ToTable("ledger_nodes");
        builder.HasKey(n => new { n.Level, n.Position });
    }
}

internal sealed class LedgerHeadMapping : IEntityTypeConfiguration<LedgerHead>
{
    public void Configure(EntityTypeBuilder<LedgerHead> builder)
    {
        builder.ToTable("ledger_head");
        builder.Property(h => h.Id).ValueGeneratedNever();
    }
}

internal sealed class CheckpointMapping : IEntityTypeConfiguration<CheckpointRow>
{
    public void Configure(EntityTypeBuilder<CheckpointRow> builder)
    {
        builder.ToTable("checkpoints");
        builder.HasKey(c => c.TreeSize);
        builder.Property(c => c.TreeSize).ValueGeneratedNever();
    }
}

internal sealed class CheckpointStampMapping : IEntityTypeConfiguration<CheckpointStampRow>
{
    public void Configure(EntityTypeBuilder<CheckpointStampRow> builder)
    {
        builder.ToTable("checkpoint_stamps");
        builder.HasKey(s => s.TreeSize);
        builder.Property(s => s.TreeSize).ValueGeneratedNever();
        builder
            .HasOne<CheckpointRow>()
            .WithOne()
            .HasForeignKey<CheckpointStampRow>(s => s.TreeSize)
            .OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class AttachmentMapping : IEntityTypeConfiguration<Attachment>
{
    public void Configure(EntityTypeBuilder<Attachment> builder)
    {
        builder.ToTable("attachments");
        builder.HasKey(a => a.Sha256);
        builder.Property(a => a.Sha256).HasMaxLength(64).IsFixedLength();
        builder.Property(a => a.MediaType).HasMaxLength(80);
    }
}

internal sealed class ProcessLogMapping : IEntityTypeConfiguration<ProcessLogRow>
{
    public void Configure(EntityTypeBuilder<ProcessLogRow> builder)
    {
        builder.ToTable("process_logs");
        builder.HasKey(l => l.RunId);
        builder.Property(l => l.Header).HasColumnType("jsonb");
        builder.Property(l => l.OriginalAttachment).HasMaxLength(64).IsFixedLength();
    }
}

internal sealed class ProcessLogChunkMapping : IEntityTypeConfiguration<ProcessLogChunkRow>
{
    public void Configure(EntityTypeBuilder<ProcessLogChunkRow> builder)
    {
        builder.ToTable("process_log_chunks");
        builder.HasKey(c => new
        {
            c.RunId,
            c.Ordinal,
            c.Position,
        });
    }
}

internal sealed class ProcessLogLevelMapping : IEntityTypeConfiguration<ProcessLogLevelRow>
{
    public void Configure(EntityTypeBuilder<ProcessLogLevelRow> builder)
    {
        builder.ToTable("process_log_levels");
        builder.HasKey(l => new
        {
            l.RunId,
            l.Ordinal,
            l.SamplesPerBucket,
        });
    }
}

internal sealed class RunFigureMapping : IEntityTypeConfiguration<RunFigureRow>
{
    public void Configure(EntityTypeBuilder<RunFigureRow> builder)
    {
        builder.ToTable("run_figures");
        builder.HasKey(f => new { f.RunId, f.Parameter });
        builder.Property(f => f.Parameter).IsWord();
        // A look across many runs is answered by the index alone.
        builder
            .HasIndex(f => new
            {
                f.ProcedureRevisionId,
                f.Parameter,
                f.StartedAt,
            })
            .IncludeProperties(f => new
            {
                f.RunId,
                f.MachineId,
                f.ToolId,
                f.OperatorId,
                f.MeanSi,
                f.StandardDeviationSi,
                f.ToolMetres,
            });
    }
}
