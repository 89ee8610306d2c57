using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Certificate;

public static class InspectionCertificateEndpoint
{
    public static void MapInspectionCertificate(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/vessels/{serial}/certificate.pdf",
            (string serial, HttpContext http, InspectionCertificateReader reader) =>
                http.PrintAsync(
                    (site, actor, token) => reader.PrintAsync(serial, site, actor, token)
                )
        );
}
