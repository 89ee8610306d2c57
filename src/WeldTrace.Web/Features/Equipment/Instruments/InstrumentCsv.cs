using System.Globalization;
using WeldTrace.Domain.Equipment;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Equipment.Instruments;

public static class InstrumentCsv
{
    private static readonly string[] Heads =
    [
        "mark",
        "measures",
        "description",
        "unit",
        "lower",
        "upper",
        "resolution",
        "largest permitted error",
        "interval months",
        "indication only",
        "last calibration",
        "due on",
        "standing",
    ];

    public static void MapInstrumentCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.InstrumentsCsv,
            async (HttpContext http, InstrumentListReader reader, SiteDay day) =>
            {
                var address = new Uri(
                    Microsoft.AspNetCore.Http.Extensions.UriHelper.GetEncodedUrl(http.Request)
                );
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(address, InstrumentListReader.SortKeys),
                    whole: true,
                    http.RequestAborted
                );
                var today = await day.TodayAsync(http.RequestAborted);
                return CsvText.File("instruments.csv", Heads, rows.Select(i => Row(i, today)));
            }
        );

    private static IReadOnlyList<string?> Row(Instrument instrument, DateOnly today) =>
        [
            instrument.Mark,
            InstrumentRules.Word(instrument.Measures),
            instrument.Text.Description,
            instrument.Text.Unit,
            instrument.Text.Lower.Digits,
            instrument.Text.Upper.Digits,
            instrument.Text.Resolution.Digits,
            instrument.Text.LargestError.Digits,
            instrument.Text.IntervalMonths.ToString(CultureInfo.InvariantCulture),
            instrument.Text.IsIndicationOnly ? "yes" : "no",
            instrument.Latest?.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            instrument.DueOn?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            InstrumentStanding.Of(instrument, today).Word,
        ];
}
