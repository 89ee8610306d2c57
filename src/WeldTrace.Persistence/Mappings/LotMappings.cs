using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WeldTrace.Domain.Lots;

namespace WeldTrace.Persistence.Mappings;

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
        builder.Property(l => l.Acceptance).IsJson();
        builder.HasIndex(l => l.Number).IsUnique();
        builder.HasIndex(l => l.DesignId);
    }
}
