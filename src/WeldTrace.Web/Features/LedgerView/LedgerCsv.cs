using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.Ledger;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.LedgerView;

public static class LedgerCsv
{
    private static readonly string[] Heads =
    [
        "number",
        "at (UTC)",
        "who",
        "act",
        "kind of record",
        "record",
        "version",
        "reason",
        "leaf hash",
    ];

    public static void MapLedgerCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.LedgerCsv,
            (HttpContext http, LedgerHandler handler) =>
                CsvText.LongFile(
                    "ledger.csv",
                    Heads,
                    handler
                        .ReadAllAsync(
                            TableQuery.Read(
                                new Uri(http.Request.GetEncodedUrl()),
                                LedgerHandler.SortKeys
                            ),
                            http.RequestAborted
                        )
                        .Select(Row)
                )
        );

    private static IReadOnlyList<string?> Row(LedgerEntry entry) =>
        [
            entry.Number.ToString(CultureInfo.InvariantCulture),
            CsvText.Instant(entry.At),
            entry.ActorName,
            entry.Act,
            entry.RecordKind,
            entry.RecordId.ToString("D"),
            entry.RecordVersion.ToString(CultureInfo.InvariantCulture),
            entry.Reason,
            Convert.ToHexStringLower(entry.LeafHash()),
        ];
}
