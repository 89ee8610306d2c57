using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents.Labels;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Labels;

/// <summary>What labels are printed for.</summary>
public enum LabelKind
{
    Tools,
    Components,
    Instruments,
    Machines,
    Lots,
}

/// <summary>A record that may get a label.</summary>
public sealed record LabelChoice(Guid Id, string Mark, IReadOnlyList<string> Lines, string Path);

/// <summary>Finds what labels are printed for, and prints them.</summary>
public sealed class LabelReader(IDbContextFactory<WeldTraceDbContext> contexts, StampReader stamps)
{
    /// <summary>Most records offered, and most labels of one sheet.</summary>
    public const int Most = 240;

    /// <summary>Records in use whose mark has a text in it, by mark.</summary>
    public async Task<IReadOnlyList<LabelChoice>> ListAsync(
        LabelKind kind,
        string text,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(text);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await LabelChoices.ReadAsync(db, kind, text.Trim(), null, cancellation);
    }

    /// <summary>A sheet with the labels of some records; null when none of them exists.</summary>
    public async Task<byte[]?> PrintAsync(
        LabelKind kind,
        IReadOnlyCollection<Guid> ids,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var chosen = await LabelChoices.ReadAsync(db, kind, "", ids, cancellation);
        if (chosen.Count == 0)
        {
            return null;
        }

        var model = new LabelSheetModel
        {
            Stamp = await stamps.ReadAsync(actor, cancellation),
            Subject = Word(kind),
            Labels =
            [
                .. chosen.Select(c => new Label(
                    c.Mark,
                    c.Lines,
                    new Uri(address, c.Path).AbsoluteUri
                )),
            ],
        };
        using var pdf = new MemoryStream();
        LabelSheetExporter.Write(model, pdf);
        return pdf.ToArray();
    }

    public static string Word(LabelKind kind) =>
        kind switch
        {
            LabelKind.Tools => "tools",
            LabelKind.Components => "components",
            LabelKind.Instruments => "instruments",
            LabelKind.Machines => "machines",
            LabelKind.Lots => "material lots",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
        };
}
