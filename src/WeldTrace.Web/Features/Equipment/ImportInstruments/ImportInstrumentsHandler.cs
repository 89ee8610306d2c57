using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Importing;

namespace WeldTrace.Web.Features.Equipment.ImportInstruments;

/// <summary>Enters instruments from a list; their calibrations are entered one by one, each with its certificate.</summary>
public sealed class ImportInstrumentsHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public static IReadOnlyList<ImportColumn> Columns { get; } =
    [
        new("mark", "permanent mark on the instrument", true),
        new("measures", "what it measures: " + Kinds, true),
        new("description", "what it is", true),
        new("unit", "unit that it reads in", true),
        new("from", "lower end of its range; 0 when left out"),
        new("to", "upper end of its range", true),
        new("resolution", "smallest step that it shows", true),
        new("largest error", "largest permitted error", true),
        new("interval months", "months between calibrations; 12 when left out"),
        new("indication only", "yes when its values never decide an acceptance"),
    ];

    private static string Kinds =>
        string.Join(", ", Enum.GetValues<InstrumentKind>().Select(InstrumentRules.Word));

    public async Task<ImportResult> HandleAsync(
        string text,
        bool isConfirmed,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var list = CsvImport.Read(text, Columns);
        if (list.Problems.Count > 0)
        {
            return ImportResult.Unreadable(list.Problems);
        }

        var at = clock.GetUtcNow();
        var instruments = list.Rows.Select(r => Read(r, actor, at)).ToList();
        var marks = instruments.Select(i => i.Name).ToList();
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var taken = await db
            .Instruments.Where(i => marks.Contains(i.Mark))
            .Select(i => i.Mark)
            .ToHashSetAsync(cancellation);
        return await db.FinishAsync(instruments, taken, isConfirmed, cancellation);
    }

    private static ImportedRecord<Instrument> Read(ImportRow row, Actor actor, DateTimeOffset at)
    {
        var entries = new Entries();
        var form = new NewInstrumentForm
        {
            Mark = row["mark"],
            Kind = KindOf(row["measures"]),
            Description = row["description"],
            Unit = row["unit"],
            Lower = OrElse(row["from"], "0"),
            Upper = row["to"],
            Resolution = row["resolution"],
            LargestError = row["largest error"],
            IntervalMonths = OrElse(row["interval months"], "12"),
            IsIndicationOnly = row["indication only"]
                .Equals("yes", StringComparison.OrdinalIgnoreCase),
        };
        var text = form.Read(entries);
        var instrument = Instrument.Enter(text, actor, at);
        // What could not be read stands in as 0: only the reading is to blame then, not the rules.
        IReadOnlyList<Refusal> refusals =
            entries.Refusals.Count > 0 ? entries.Refusals : instrument.Refusals;
        return new(
            row,
            text.Mark,
            $"{row["description"]}, {row["from"]} to {row["to"]} {row["unit"]}",
            refusals.Count == 0 ? instrument.Value : null,
            refusals
        );
    }

    /// <summary>The kind of a word as the pages write it; the word itself, so that it is told, when it is none.</summary>
    private static string KindOf(string word)
    {
        var kinds = Enum.GetValues<InstrumentKind>()
            .Where(k => InstrumentRules.Word(k).Equals(word, StringComparison.OrdinalIgnoreCase))
            .ToList();
        return kinds.Count == 1 ? kinds[0].ToString() : word;
    }

    private static string OrElse(string cell, string usual) => cell.Length > 0 ? cell : usual;
}
