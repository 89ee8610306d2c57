using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Testing;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Laboratory.List;

public static class LaboratoryCsv
{
    private static readonly string[] Heads =
    [
        "test",
        "sample",
        "vessel",
        "production lot",
        "joint",
        "verdict",
        "verdict in words",
        "tested on",
        "tester",
        "signed at (UTC)",
    ];

    public static void MapLaboratoryCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.LaboratoryCsv,
            async (HttpContext http, LaboratoryListReader reader) =>
            {
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(
                        new Uri(http.Request.GetEncodedUrl()),
                        LaboratoryListReader.SortKeys
                    ),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("laboratory.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(LaboratoryTest test) =>
        [
            TestKinds.Of(test.Test).Word,
            test.Subject.Sample,
            test.Subject.VesselSerial,
            test.ProductionLot,
            test.Subject.JointCode,
            TestRecord.VerdictWord(test.Verdict),
            test.VerdictSentence,
            FormattableString.Invariant($"{test.Header.TestedOn:yyyy-MM-dd}"),
            test.TesterName,
            CsvText.Instant(test.SignedAt),
        ];
}
