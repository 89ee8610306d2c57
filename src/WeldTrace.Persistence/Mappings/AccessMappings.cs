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
