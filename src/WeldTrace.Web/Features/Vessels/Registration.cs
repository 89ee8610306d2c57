using WeldTrace.Web.Features.Vessels.Book;
using WeldTrace.Web.Features.Vessels.Bundle;
using WeldTrace.Web.Features.Vessels.Certificate;
using WeldTrace.Web.Features.Vessels.Compliance;
using WeldTrace.Web.Features.Vessels.Genealogy;
using WeldTrace.Web.Features.Vessels.List;
using WeldTrace.Web.Features.Vessels.Plan;
using WeldTrace.Web.Features.Vessels.Prepare;
using WeldTrace.Web.Features.Vessels.Ship;
using WeldTrace.Web.Features.Vessels.Traveler;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels;

public static class Registration
{
    public static IServiceCollection AddVessels(this IServiceCollection services) =>
        services
            .AddScoped<VesselListReader>()
            .AddScoped<VesselPageReader>()
            .AddScoped<PlanVesselHandler>()
            .AddScoped<PrepareJointHandler>()
            .AddScoped<ShipVesselHandler>()
            .AddScoped<TravelerReader>()
            .AddScoped<InspectionCertificateReader>()
            .AddScoped<GenealogyReader>()
            .AddScoped<ComplianceReader>()
            .AddScoped<BookReader>()
            .AddScoped<BundleReader>()
            .AddScoped<IHistoryBundles>(provider => provider.GetRequiredService<BundleReader>());

    public static void MapVessels(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapVesselCsv();
        endpoints.MapTraveler();
        endpoints.MapInspectionCertificate();
        endpoints.MapCompliance();
        endpoints.MapBook();
        endpoints.MapBundle();
    }
}
