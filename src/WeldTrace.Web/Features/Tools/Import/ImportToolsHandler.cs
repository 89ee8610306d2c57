using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Web.Importing;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Tools.Import;

/// <summary>Enters tools from a list, with what they welded before and how they ended.</summary>
public sealed class ImportToolsHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public static IReadOnlyList<ImportColumn> Columns { get; } =
    [
        new("mark", "permanent mark on the tool", true),
        new("design", "drawing, such as TD-15 rev A; without revision the latest", true),
        new("pin", "mark of the pin, where it is a separate part"),
        new("shoulder", "mark of the shoulder, where it is a separate part"),
        new("used m", "metres welded before it is entered here"),
        new("used source", "where those metres are recorded"),
        new("retired for", "limit, wear, breakage or other, for a tool that is retired"),
        new("seen", "what was seen on a retired tool"),
    ];

    private static readonly string[] Ignored = ["state", "limit m"];

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
        var designs = await db
            .ToolDesigns.AsNoTracking()
            .OrderByDescending(d => d.RevisionIndex)
            .ToListAsync(cancellation);
        var at = clock.GetUtcNow();
        var tools = list.Rows.Select(r => Read(r, designs, actor, at)).ToList();
        var marks = tools.Select(t => t.Name).ToList();
        var taken = await db
            .Tools.Where(t => marks.Contains(t.Mark))
            .Select(t => t.Mark)
            .ToHashSetAsync(cancellation);
        return await db.FinishAsync(tools, taken, isConfirmed, cancellation);
    }

    private static ImportedRecord<Tool> Read(
        ImportRow row,
        IReadOnlyList<ToolDesign> designs,
        Actor actor,
        DateTimeOffset at
    )
    {
        List<Refusal> refusals = [];
        var design = designs.FirstOrDefault(d =>
            d.Label.Equals(row["design"], StringComparison.OrdinalIgnoreCase)
            || d.Number.Equals(row["design"], StringComparison.OrdinalIgnoreCase)
        );
        if (design is null)
        {
            refusals.Add(
                new(
                    "design",
                    $"There is no tool design '{row["design"]}'; enter it first, or check the name."
                )
            );
        }

        var used = Used(row, refusals);
        var why = Why(row, refusals);
        var tool = design is null ? null : Make(row, design, used, why, refusals, actor, at);
        var what = used is > 0
            ? FormattableString.Invariant($"{design?.Label}, {used} m used")
            : design?.Label ?? "";
        return new(row, row["mark"], what, tool, refusals);
    }

    private static decimal? Used(ImportRow row, List<Refusal> refusals) =>
        row["used m"].Length == 0
            ? null
            : Typed.Number(row["used m"], "used m", "used m", refusals);

    private static RetirementReason? Why(ImportRow row, List<Refusal> refusals)
    {
        if (row["retired for"].Length == 0)
        {
            return null;
        }

        if (
            Enum.TryParse<RetirementReason>(row["retired for"], ignoreCase: true, out var why)
            && Enum.IsDefined(why)
        )
        {
            return why;
        }

        refusals.Add(
            new(
                "retired",
                $"'{row["retired for"]}' is no cause; write limit, wear, breakage or other."
            )
        );
        return null;
    }

    private static Tool? Make(
        ImportRow row,
        ToolDesign design,
        decimal? used,
        RetirementReason? why,
        List<Refusal> refusals,
        Actor actor,
        DateTimeOffset at
    )
    {
        var parts =
            row["pin"].Length + row["shoulder"].Length > 0
                ? new ToolPartMarks(row["pin"], row["shoulder"])
                : null;
        var tool = Tool.Enter(row["mark"], design, actor, at, parts);
        refusals.AddRange(tool.Refusals);
        if (tool.Value is { } entered)
        {
            var source = row["used source"].Length > 0 ? row["used source"] : "imported list";
            refusals.AddRange(
                used is { } metres && metres != 0
                    ? entered
                        .TakeOver(Length.FromMetres((double)metres), source, actor, at)
                        .Refusals
                    : []
            );
            refusals.AddRange(
                why is { } end ? entered.Retire(end, row["seen"], actor, at).Refusals : []
            );
        }

        return tool.Value;
    }
}
