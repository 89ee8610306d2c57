using WeldTrace.Domain.Tooling;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Tools;

/// <summary>How the figures of a tool are worked out, for either failure that is studied.</summary>
public sealed class ToolWorkings(ToolReader reader) : IWorkings
{
    private const string Word = "tools";

    public string Kind => Word;

    public static string LifeLeft(Guid tool, int next) =>
        Routes.Working(Word, tool, FormattableString.Invariant($"left-{next + 1}"));

    public static string Survival(Guid tool, RetirementReason mode, int next) =>
        Routes.Working(Word, tool, SurvivalKey(mode, next));

    public static string Fit(Guid tool, RetirementReason mode) =>
        Routes.Working(Word, tool, $"life-{mode}");

    public static string Bound(Guid tool, RetirementReason mode) =>
        Routes.Working(Word, tool, $"scale-{mode}");

    public static string Wear(Guid tool) => Routes.Working(Word, tool, "wear");

    public async Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation) =>
        await reader.FindAsync(id, cancellation) is { } view
            ? new RecordWorkings(
                $"Tool {view.Tool.Mark}",
                Routes.Tool(id),
                [
                    .. OfTool(new ToolFigures(view)),
                    .. Enum.GetValues<RetirementReason>()
                        .SelectMany(mode => OfFamily(new ToolFigures(view, mode))),
                ]
            )
            : null;

    private static IEnumerable<NamedWorking> OfTool(ToolFigures figures)
    {
        foreach (var (i, next) in figures.Next.Index())
        {
            yield return new(FormattableString.Invariant($"left-{i + 1}"), next.Usage.Working);
        }

        if (figures.Trend is { IsRefused: false } trend)
        {
            yield return new("wear", trend.Working);
        }
    }

    private static IEnumerable<NamedWorking> OfFamily(ToolFigures figures)
    {
        if (!figures.Fit.IsRefused)
        {
            yield return new($"life-{figures.Mode}", figures.Fit.Working);
        }

        if (!figures.AssumedBound.IsRefused)
        {
            yield return new($"scale-{figures.Mode}", figures.AssumedBound.Working);
        }

        foreach (var (i, next) in figures.Next.Index())
        {
            if (figures.SurvivalWorking(next) is { } survival)
            {
                yield return new(SurvivalKey(figures.Mode, i), survival);
            }
        }
    }

    private static string SurvivalKey(RetirementReason mode, int next) =>
        FormattableString.Invariant($"survival-{mode}-{next + 1}");
}
