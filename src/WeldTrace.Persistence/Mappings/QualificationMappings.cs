using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WeldTrace.Domain.Limits;

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
