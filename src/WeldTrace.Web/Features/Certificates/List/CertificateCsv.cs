using System.Globalization;
using WeldTrace.Domain.Certification;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Certificates.List;

public static class CertificateCsv
{
    private const string Day = "yyyy-MM-dd";

    private static readonly string[] Heads =
    [
        "number",
        "person",
        "kind",
        "covers",
        "tested on",
        "expires on",
        "confirmation due",
        "standing",
    ];

    public static void MapCertificateCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.CertificatesCsv,
            async (HttpContext http, CertificateListReader reader, SiteDay day) =>
            {
                var address = new Uri(
                    Microsoft.AspNetCore.Http.Extensions.UriHelper.GetEncodedUrl(http.Request)
                );
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(address, CertificateListReader.SortKeys),
                    whole: true,
                    http.RequestAborted
                );
                var today = await day.TodayAsync(http.RequestAborted);
                return CsvText.File("certificates.csv", Heads, rows.Select(c => Row(c, today)));
            }
        );

    private static IReadOnlyList<string?> Row(Certificate certificate, DateOnly today) =>
        [
            certificate.Number,
            certificate.PersonName,
            CertificateWords.Of(certificate.Attests),
            CertificateScopeText.Of(certificate),
            certificate.Text.TestedOn.ToString(Day, CultureInfo.InvariantCulture),
            certificate.ExpiresOn.ToString(Day, CultureInfo.InvariantCulture),
            certificate.ConfirmationDue?.ToString(Day, CultureInfo.InvariantCulture),
            CertificateStanding.Of(certificate, today).Word,
        ];
}
