using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.Extensions.DependencyInjection;

namespace WeldTrace.Persistence.Archives;

/// <summary>Tells a context where archived bundles are.</summary>
internal sealed class ArchiveOption(ArchiveFolder folder) : IDbContextOptionsExtension
{
    public ArchiveFolder Folder { get; } = folder;

    public DbContextOptionsExtensionInfo Info => new ArchiveOptionInfo(this);

    public void ApplyServices(IServiceCollection services) { }

    public void Validate(IDbContextOptions options) { }

    private sealed class ArchiveOptionInfo(ArchiveOption option)
        : DbContextOptionsExtensionInfo(option)
    {
        public override bool IsDatabaseProvider => false;

        public override string LogFragment => "";

        public override int GetServiceProviderHashCode() => 0;

        public override bool ShouldUseSameServiceProvider(DbContextOptionsExtensionInfo other) =>
            true;

        public override void PopulateDebugInfo(IDictionary<string, string> debugInfo) { }
    }
}
