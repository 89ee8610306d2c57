using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;

namespace WeldTrace.Persistence.Mappings;

internal sealed class LimitTableMapping : IEntityTypeConfiguration<LimitTable>
{
    public void Configure(EntityTypeBuilder<LimitTable> builder)
    {
        builder.IsRecord("limit_tables");
        builder.Property(t => t.Code).HasMaxLength(LimitTable.LongestCode);
        builder.Property(t => t.ChangeReason).HasMaxLength(LimitTable.LongestText);
        builder.Property(t => t.Covers).IsWord();
        builder.Property(t => t.Evidence).IsWord();
        builder.Property(t => t.Text).IsJson();
        builder.Property(t => t.OwnCheck).IsJson();
        builder.HasIndex(t => new { t.Code, t.Edition }).IsUnique();
    }
}

internal sealed class QualificationMapping : IEntityTypeConfiguration<QualificationRecord>
{
    public void Configure(EntityTypeBuilder<QualificationRecord> builder)
    {
        builder.IsRecord("qualifications");
        builder.Property(q => q.Number).HasMaxLength(QualificationRecord.LongestNumber);
        builder.Property(q => q.ProcedureNumber).HasMaxLength(ProcedureRevision.LongestNumber);
        builder.Property(q => q.AbandonedBecause).HasMaxLength(QualificationRecord.LongestReason);
        builder.Property(q => q.PlannedByName).HasMaxLength(Person.LongestName);
        builder.Property(q => q.State).IsWord();
        builder.Property(q => q.Plan).IsJson();
        builder.Property(q => q.Range).IsJson();
        builder.HasIndex(q => q.Number).IsUnique();
        builder.HasIndex(q => q.ProcedureRevisionId);
        builder.HasIndex(q => q.ProcedureNumber);
    }
}

internal sealed class TestPieceMapping : IEntityTypeConfiguration<TestPiece>
{
    public void Configure(EntityTypeBuilder<TestPiece> builder)
    {
        builder.IsRecord("test_pieces");
        builder.Property(p => p.Remark).HasMaxLength(TestPiece.LongestText);
        builder.Property(p => p.State).IsWord();
        builder.Property(p => p.Lots).IsJson();
        builder.Property(p => p.Gate).IsJson();
        builder.Property(p => p.Log).IsJson();
        builder.Property(p => p.Travelled).IsQuantity("travelled_m");
        builder
            .HasIndex(p => p.QualificationId)
            .IsUnique()
            .HasFilter("state = 'Welding'")
            .HasDatabaseName("ix_test_pieces_one_welding");
        builder.HasIndex(p => new { p.QualificationId, p.Mark });
        builder.HasIndex(p => p.ToolId);
        builder.HasIndex(p => p.MachineId);
    }
}

internal sealed class SpecimenTestMapping : IEntityTypeConfiguration<SpecimenTest>
{
    public void Configure(EntityTypeBuilder<SpecimenTest> builder)
    {
        builder.IsRecord("specimen_tests");
        builder.Property(t => t.Test).IsWord();
        builder.Property(t => t.Verdict).IsWord();
        builder.Property(t => t.Header).IsJson();
        builder.Property(t => t.Entry).IsJson();
        builder.Property(t => t.Instrument).IsJson();
        builder.Property(t => t.FileSha256).HasMaxLength(64);
        builder.Property(t => t.TesterName).HasMaxLength(Person.LongestName);
        builder.HasIndex(t => t.QualificationId);
        builder
            .HasIndex(t => new
            {
                t.PieceId,
                t.PlannedId,
                t.Attempt,
            })
            .IsUnique();
    }
}
