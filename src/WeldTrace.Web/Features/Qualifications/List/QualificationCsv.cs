using WeldTrace.Domain.Qualification;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Qualifications.List;

public static class QualificationCsv
{
    private static readonly string[] Heads =
    [
        "number",
        "procedure",
        "state",
        "planned by",
        "closed at",
        "covers",
    ];

    public static void MapQualificationCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.QualificationsCsv,
            async (HttpContext http, QualificationListReader reader) =>
            {
                var address = new Uri(
                    Microsoft.AspNetCore.Http.Extensions.UriHelper.GetEncodedUrl(http.Request)
                );
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(address, QualificationListReader.SortKeys),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("qualifications.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(QualificationRecord record) =>
        [
            record.Number,
            record.ProcedureLabel,
            QualificationRecord.StateWord(record.State),
            record.PlannedByName,
            record.ClosedAt is { } closed ? CsvText.Instant(closed) : null,
            record.Range is { } range ? RangeWords.Sentence(range) : null,
        ];
}
