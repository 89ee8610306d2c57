using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.ProductionTesting;

namespace WeldTrace.Persistence.Mappings;

internal sealed class ProductionTestMapping : IEntityTypeConfiguration<ProductionTest>
{
    public void Configure(EntityTypeBuilder<ProductionTest> builder)
    {
        builder.IsRecord("production_tests");
        builder.Property(t => t.Mark).HasMaxLength(ProductionTest.LongestText);
        builder.Property(t => t.Result).HasMaxLength(ProductionTest.LongestText);
        builder.HasIndex(t => new
        {
            t.MachineId,
            t.ProcedureRevisionId,
            t.At,
        });
    }
}

internal sealed class ProductionLotMapping : IEntityTypeConfiguration<ProductionLot>
{
    public void Configure(EntityTypeBuilder<ProductionLot> builder)
    {
        builder.IsRecord("production_lots");
        builder.Property(l => l.Number).HasMaxLength(ProductionLot.LongestNumber);
        builder.Property(l => l.State).IsWord();
        builder.Property(l => l.Rule).IsJson();
        builder.Property(l => l.Plan).IsJson();
        builder.Property(l => l.Vessels).IsJson();
        builder.Property(l => l.Samples).IsJson();
        builder.Property(l => l.Results).IsJson();
        builder.Property(l => l.Laboratory).IsJson();
        builder.Property(l => l.Acceptance).IsJson();
        builder.HasIndex(l => l.Number).IsUnique();
        builder.HasIndex(l => l.DesignId);
    }
}
