using WeldTrace.Web.Features.Certificates.Issue;
using WeldTrace.Web.Features.Certificates.List;
using WeldTrace.Web.Features.Certificates.Show;

namespace WeldTrace.Web.Features.Certificates;

public static class Registration
{
    public static IServiceCollection AddCertificates(this IServiceCollection services) =>
        services
            .AddScoped<CertificateListReader>()
            .AddScoped<IssueCertificateHandler>()
            .AddScoped<CertificateHandler>();

    public static void MapCertificates(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapCertificateCsv();
}
