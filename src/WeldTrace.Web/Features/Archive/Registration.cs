using WeldTrace.Web.Features.Archive.ArchiveVessel;
using WeldTrace.Web.Features.Archive.Overview;

namespace WeldTrace.Web.Features.Archive;

public static class Registration
{
    public static IServiceCollection AddArchive(this IServiceCollection services) =>
        services
            .AddScoped<ArchiveOverviewReader>()
            .AddScoped<ArchiveReader>()
            .AddScoped<BundleDraft>()
            .AddScoped<ArchiveHandler>();
}
