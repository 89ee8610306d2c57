using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering;
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
    /// <param name="test">Test.</param>
    /// <param name="number">Stage, from 1.</param>
    /// <param name="part">Which of its workings, from 0.</param>
    public static string Stage(Guid test, int number, int part) =>
        Routes.Working(Word, test, StageKey(number, part));

    /// <summary>What opens a working of a stage; its further ones are told apart by what they compute.</summary>
    public static string Question(int number, int part, Working working)
    {
        ArgumentNullException.ThrowIfNull(working);
        return part == 0
            ? $"How was stage {number} worked out?"
            : $"How was stage {number} worked out: {working.Title}?";
    }

    public async Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation) =>
        await tests.FindAsync(id, cancellation) is { } shown
            ? new RecordWorkings(shown.Test.Label, TestLinks.Of(shown.Test), [.. Of(shown)])
            : null;

    private static IEnumerable<NamedWorking> Of(ShownTest shown) =>
        shown.Test switch
        {
            LeakTest leak => [new("leak-rate", leak.Working(shown.Design))],
            PressureTest pressure => pressure.Stages.SelectMany(
                (stage, i) =>
                    pressure
                        .Workings(stage, shown.Design)
                        .Select((working, part) => new NamedWorking(StageKey(i + 1, part), working))
            ),
            SectionExamination { Picture: { } picture } => PictureWorkings.Of(picture),
            _ => [],
        };

    private static string StageKey(int number, int part) =>
        part == 0
            ? FormattableString.Invariant($"stage-{number}")
            : FormattableString.Invariant($"stage-{number}-{part + 1}");
}
