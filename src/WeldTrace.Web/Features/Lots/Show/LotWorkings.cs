using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Lots.Show;

/// <summary>How the figures of a production lot are worked out, until its acceptance states them for good.</summary>
public sealed class LotWorkings(LotHandler lots) : IWorkings
{
    private const string Word = "lots";

    public string Kind => Word;

    /// <summary>Address of a working, counted from 0.</summary>
    public static string At(Guid lot, int index) => Routes.Working(Word, lot, Key(index));

    public async Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation) =>
        await lots.FindAsync(id, cancellation) is { } view
            ? new RecordWorkings(
                view.Lot.Label,
                Routes.Lot(id),
                view.Lot.Acceptance is null
                    ? [.. view.Workings.Select((w, i) => new NamedWorking(Key(i), w))]
                    : []
            )
            : null;

    private static string Key(int index) => FormattableString.Invariant($"statement-{index + 1}");
}
