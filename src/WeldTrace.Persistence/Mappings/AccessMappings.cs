using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WeldTrace.Domain.Access;

namespace WeldTrace.Persistence.Mappings;

internal sealed class SystemTokenMapping : IEntityTypeConfiguration<SystemToken>
{
    public void Configure(EntityTypeBuilder<SystemToken> builder)
    {
        builder.IsRecord("system_tokens");
        builder.Property(t => t.SystemName).HasMaxLength(SystemToken.LongestText);
        builder.Property(t => t.Scope).IsWord();
        builder.Property(t => t.TokenSha256).HasMaxLength(64).IsFixedLength();
        builder.HasIndex(t => t.TokenSha256).IsUnique();
    }
}

internal sealed class SharedTabletMapping : IEntityTypeConfiguration<SharedTablet>
{
    public void Configure(EntityTypeBuilder<SharedTablet> builder)
    {
        builder.IsRecord("shared_tablets");
        builder.Property(t => t.Name).HasMaxLength(SharedTablet.LongestText);
        builder.Property(t => t.TokenSha256).HasMaxLength(64).IsFixedLength();
        builder.HasIndex(t => t.TokenSha256).IsUnique();
    }
}
