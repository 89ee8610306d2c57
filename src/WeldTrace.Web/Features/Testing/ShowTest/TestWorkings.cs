using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Pictures;

namespace WeldTrace.Web.Features.Testing.ShowTest;

/// <summary>How the figures of a recorded test are worked out.</summary>
public sealed class TestWorkings(ShowTestHandler tests) : IWorkings
{
    private const string Word = PictureWorkings.Kind;

    public string Kind => Word;

    public static string LeakRate(Guid test) => Routes.Working(Word, test, "leak-rate");

    /// <summary>Address of the working of a stage, counted from 1.</summary>
    public static string Stage(Guid test, int number) =>
        Routes.Working(Word, test, StageKey(number));

    public async Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation) =>
        await tests.FindAsync(id, cancellation) is { } shown
            ? new RecordWorkings(shown.Test.Label, TestLinks.Of(shown.Test), [.. Of(shown)])
            : null;

    private static IEnumerable<NamedWorking> Of(ShownTest shown) =>
        shown.Test switch
        {
            LeakTest leak => [new("leak-rate", leak.Working(shown.Design))],
            PressureTest pressure => pressure.Stages.Select(
                (stage, i) =>
                    new NamedWorking(StageKey(i + 1), pressure.Working(stage, shown.Design))
            ),
            SectionExamination { Picture: { } picture } => PictureWorkings.Of(picture),
            _ => [],
        };

    private static string StageKey(int number) => FormattableString.Invariant($"stage-{number}");
}
