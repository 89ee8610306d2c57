using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Persistence.Mappings;

internal sealed class LeakTestMapping : IEntityTypeConfiguration<LeakTest>
{
    public void Configure(EntityTypeBuilder<LeakTest> builder)
    {
        builder.IsTest("leak_tests");
        builder.Property(t => t.Method).IsWord();
        builder.Property(t => t.Decay).IsJson();
        builder.Property(t => t.Bubble).IsJson();
        builder.Property(t => t.Tracer).IsJson();
        builder.Property(t => t.Acknowledgement).IsJson();
        builder.Property(t => t.Result).IsJson();
    }
}

internal sealed class PressureTestMapping : IEntityTypeConfiguration<PressureTest>
{
    public void Configure(EntityTypeBuilder<PressureTest> builder)
    {
        builder.IsTest("pressure_tests");
        builder.Property(t => t.SetUp).IsJson();
        builder.Property(t => t.Stages).IsJson();
        builder.Property(t => t.Departures).IsJson();
    }
}

internal sealed class SectionMapping : IEntityTypeConfiguration<SectionExamination>
{
    public void Configure(EntityTypeBuilder<SectionExamination> builder)
    {
        builder.IsTest("sections");
        builder.Property(t => t.Cut).IsJson();
        builder.Property(t => t.Measurement).IsJson();
        builder.Property(t => t.Photograph).IsJson();
        builder.Property(t => t.Standards).IsJson();
        builder.Property(t => t.Picture).IsJson();
    }
}

internal sealed class LaboratoryTestMapping : IEntityTypeConfiguration<LaboratoryTest>
{
    public void Configure(EntityTypeBuilder<LaboratoryTest> builder)
    {
        builder.IsRecord("laboratory_tests");
        builder.Property(t => t.ProductionLot).HasMaxLength(Vessel.LongestText);
        builder.Property(t => t.Subject).IsJson();
        builder.Property(t => t.Test).IsWord();
        builder.Property(t => t.Header).IsJson();
        builder.Property(t => t.Entry).IsJson();
        builder.Property(t => t.Lines).IsJson();
        builder.Property(t => t.Instruments).IsJson();
        builder.Property(t => t.FileSha256).HasMaxLength(64);
        builder.Property(t => t.Verdict).IsWord();
        builder.Property(t => t.TesterName).HasMaxLength(Person.LongestName);
        builder.HasIndex(t => t.VesselId);
        builder.HasIndex(t => t.ProductionLot);
    }
}

internal sealed class StepSignOffMapping : IEntityTypeConfiguration<StepSignOff>
{
    public void Configure(EntityTypeBuilder<StepSignOff> builder)
    {
        builder.IsRecord("step_sign_offs");
        builder.Property(s => s.StepKind).IsWord();
        builder.Property(s => s.Remark).HasMaxLength(StepSignOff.LongestRemark);
        builder.Property(s => s.Examination).IsJson();
        builder.HasIndex(s => s.VesselId);
    }
}

internal static class TestMapping
{
    public static void IsTest<T>(this EntityTypeBuilder<T> builder, string table)
        where T : TestRecord
    {
        builder.IsRecord(table);
        builder.Property(t => t.Verdict).HasConversion<string>().HasMaxLength(40);
        builder.Property(t => t.Remark).HasMaxLength(TestRecord.LongestText);
        builder.Property(t => t.Withdrawal).IsJson();
        builder.Property(t => t.Instruments).IsJson();
        builder.HasIndex(t => t.Instruments).HasMethod("gin");
        builder.HasIndex(t => t.TestedAt);
        builder.HasIndex(t => t.VesselId);
        builder
            .HasIndex(t => new { t.VesselId, t.StepSequence })
            .IsUnique()
            .HasFilter("signed_at IS NULL AND withdrawal IS NULL")
            .HasDatabaseName($"ix_{table}_one_unsigned");
    }
}
