using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Qualifications.Enter;

/// <summary>How the figure of a qualification's result follows from what was measured.</summary>
public sealed class ResultWorkings(ResultReader reader) : IWorkings
{
    private const string Word = "results";
    private const string Strength = "strength";

    public string Kind => Word;

    public static string StrengthOf(Guid result) => Routes.Working(Word, result, Strength);

    public async Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation) =>
        await reader.FindAsync(id, cancellation) is { Test: var test }
            ? new RecordWorkings(
                test.Label,
                Routes.Result(id),
                test.Entry.Tensile is { } tensile
                    ? [new NamedWorking(Strength, tensile.Specimen.Working)]
                    : []
            )
            : null;
}
