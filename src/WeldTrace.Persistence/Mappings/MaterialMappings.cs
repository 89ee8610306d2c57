using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Persistence.Mappings;

internal sealed class CutComponentMapping : IEntityTypeConfiguration<CutComponent>
{
    public void Configure(EntityTypeBuilder<CutComponent> builder)
    {
        builder.IsRecord("components");
        builder.Property(c => c.Serial).HasMaxLength(CutComponent.LongestText);
        builder.Property(c => c.PartKind).HasMaxLength(CutComponent.LongestText);
        builder.Property(c => c.LotNumber).HasMaxLength(MaterialLot.LongestText);
        builder.Property(c => c.VesselSerial).HasMaxLength(Vessel.LongestText);
        builder.HasIndex(c => c.Serial).IsUnique();
        builder.HasIndex(c => c.LotId);
        builder.HasIndex(c => c.VesselId);
    }
}

internal sealed class HeatTreatmentMapping : IEntityTypeConfiguration<HeatTreatment>
{
    public void Configure(EntityTypeBuilder<HeatTreatment> builder)
    {
        builder.IsRecord("heat_treatments");
        builder.Property(t => t.Number).HasMaxLength(HeatTreatment.LongestText);
        builder.Property(t => t.Asked).IsJson();
        builder.Property(t => t.Kept).IsJson();
        builder.Property(t => t.Parts).IsJson();
        builder.Property(t => t.ChartSha256).HasMaxLength(64);
        builder.HasIndex(t => t.Number).IsUnique();
        builder.HasIndex(t => t.Parts).HasMethod("gin");
    }
}

internal sealed class JointCleaningMapping : IEntityTypeConfiguration<JointCleaning>
{
    public void Configure(EntityTypeBuilder<JointCleaning> builder)
    {
        builder.IsRecord("joint_cleanings");
        builder.Property(c => c.VesselSerial).HasMaxLength(Vessel.LongestText);
        builder.Property(c => c.Method).HasMaxLength(JointCleaning.LongestText);
        builder.Property(c => c.CleanedByName).HasMaxLength(Person.LongestName);
        builder.HasIndex(c => c.VesselId);
    }
}

internal sealed class JointFitUpMapping : IEntityTypeConfiguration<JointFitUp>
{
    public void Configure(EntityTypeBuilder<JointFitUp> builder)
    {
        builder.IsRecord("joint_fit_ups");
        builder.Property(f => f.VesselSerial).HasMaxLength(Vessel.LongestText);
        builder.Property(f => f.Gap).IsJson();
        builder.Property(f => f.Mismatch).IsJson();
        builder.Property(f => f.Uncertainty).IsJson();
        builder.Property(f => f.MeasuredByName).HasMaxLength(Person.LongestName);
        builder.HasIndex(f => f.VesselId);
        builder
            .HasIndex(f => new { f.InstrumentId, f.MeasuredAt })
            .IncludeProperties(f => f.VesselId);
    }
}
