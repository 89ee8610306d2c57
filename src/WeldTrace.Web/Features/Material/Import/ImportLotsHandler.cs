using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Importing;

namespace WeldTrace.Web.Features.Material.Import;

/// <summary>Enters material lots from a list, with type and results of their inspection documents; the scans are handed in later.</summary>
public sealed class ImportLotsHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public static IReadOnlyList<ImportColumn> Columns { get; } =
    [
        new("number", "lot number", true),
        new("alloy", "alloy, such as 6061", true),
        new("temper", "temper, such as T6", true),
        new("cast", "cast (heat) number", true),
        new("form", "product form", true),
        new("inspection document", "its number", true),
        new("type", "2.1, 2.2, 3.1 or 3.2 by EN 10204"),
        new("product standard", "standard that the document names"),
        new("rm mpa", "tensile strength"),
        new("rp0.2 mpa", "proof strength"),
        new("a %", "elongation"),
        new("thickness mm", "thickness or wall"),
        new("minima", "code of the table of minima that judges the results"),
    ];

    private static readonly string[] Ignored = ["standing"];

    public async Task<ImportResult> HandleAsync(
        string text,
        bool isConfirmed,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var list = CsvImport.Read(text, Columns, Ignored);
        if (list.Problems.Count > 0)
        {
            return ImportResult.Unreadable(list.Problems);
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var minima = await db
            .LimitTables.AsNoTracking()
            .Where(t => t.Covers == LimitKind.MaterialMinima && t.SupersededById == null)
            .ToListAsync(cancellation);
        var at = clock.GetUtcNow();
        var lots = list.Rows.Select(r => Read(r, minima, actor, at)).ToList();
        var numbers = lots.Select(l => l.Name).ToList();
        var taken = await db
            .MaterialLots.Where(l => numbers.Contains(l.Number))
            .Select(l => l.Number)
            .ToHashSetAsync(cancellation);
        return await db.FinishAsync(lots, taken, isConfirmed, cancellation);
    }

    private static ImportedRecord<MaterialLot> Read(
        ImportRow row,
        IReadOnlyList<LimitTable> minima,
        Actor actor,
        DateTimeOffset at
    )
    {
        var lot = MaterialLot.Enter(
            row["number"],
            row["alloy"],
            row["temper"],
            row["cast"],
            row["form"],
            row["inspection document"],
            actor,
            at
        );
        List<Refusal> refusals = [.. lot.Refusals];
        if (lot.Value is { } entered)
        {
            refusals.AddRange(FileDocument(entered, row, actor, at));
            refusals.AddRange(RecordResults(entered, row, minima, actor, at));
        }

        return new(
            row,
            row["number"],
            $"{row["alloy"]}-{row["temper"]}, cast {row["cast"]}, {row["form"]}",
            lot.Value,
            refusals
        );
    }

    private static IReadOnlyList<Refusal> FileDocument(
        MaterialLot lot,
        ImportRow row,
        Actor actor,
        DateTimeOffset at
    )
    {
        if (row["type"].Length == 0)
        {
            return [];
        }

        var types = Enum.GetValues<InspectionDocumentType>().ToDictionary(InspectionDocuments.Word);
        return types.TryGetValue(row["type"], out var type)
            ? lot.FileDocument(type, row["product standard"], null, actor, at).Refusals
            : [new("type", $"'{row["type"]}' is no type of document; write 2.1, 2.2, 3.1 or 3.2.")];
    }

    private static IReadOnlyList<Refusal> RecordResults(
        MaterialLot lot,
        ImportRow row,
        IReadOnlyList<LimitTable> minima,
        Actor actor,
        DateTimeOffset at
    )
    {
        var entries = new Entries();
        var values = new MaterialValues(
            entries.OptionalNumber(row["rm mpa"], "MPa", "Rm", "rm mpa"),
            entries.OptionalNumber(row["rp0.2 mpa"], "MPa", "Rp0.2", "rp0.2 mpa"),
            entries.OptionalNumber(row["a %"], "%", "A", "a %"),
            entries.OptionalNumber(row["thickness mm"], "mm", "Thickness", "thickness mm")
        );
        var table = minima.FirstOrDefault(t =>
            t.Code.Equals(row["minima"], StringComparison.OrdinalIgnoreCase)
        );
        if (row["minima"].Length > 0 && table is null)
        {
            return
            [
                .. entries.Refusals,
                new(
                    "minima",
                    $"There is no table of minima '{row["minima"]}'; there are {string.Join(", ", minima.Select(t => t.Code).DefaultIfEmpty("none"))}."
                ),
            ];
        }

        return entries.Refusals.Count > 0 ? entries.Refusals
            : values == new MaterialValues(null, null, null, null) ? []
            : lot.RecordResults(values, table, actor, at).Refusals;
    }
}
