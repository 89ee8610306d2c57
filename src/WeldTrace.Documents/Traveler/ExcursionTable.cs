using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>The excursions of a run with the findings they opened.</summary>
internal static class ExcursionTable
{
    public static IEnumerable<Block> Blocks(
        IReadOnlyList<ExcursionLine> excursions,
        UnitSystem units,
        bool struck
    )
    {
        if (excursions.Count == 0)
        {
            return [];
        }

        TableColumn[] columns =
        [
            new("No.", 7),
            new("Excursion", 22),
            new("Extreme", 18, IsNumber: true),
            new("Limit", 18, IsNumber: true),
            new("On the seam", 26, IsNumber: true),
            new("Lasted", 13, IsNumber: true),
            new("Finding", 18),
        ];
        var rows = excursions.Select(line => new TableRow([
            line.Number,
            line.Parameter,
            WithUnit(line.Extreme, line.Unit),
            WithUnit(line.Limit, line.Unit),
            Stretch(line, units),
            line.Duration is { } duration ? QuantityText.Seconds(duration) : null,
            line.Finding,
        ])
        {
            Struck = struck,
        });
        return [new Table(columns, [.. rows])];
    }

    private static string? WithUnit(string? number, string unit) =>
        number is null ? null : $"{number}\u00A0{unit}";

    private static string? Stretch(ExcursionLine line, UnitSystem units)
    {
        var from = QuantityText.Path(line.From, units);
        var to = QuantityText.Path(line.To, units);
        return from is null || to is null ? from ?? to : $"{from} to {to}";
    }
}
