using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Laboratory.Show;

/// <summary>How the figures of a laboratory test are worked out.</summary>
public sealed class LaboratoryWorkings(LaboratoryReader tests) : IWorkings
{
    public const string Efficiency = "joint-efficiency";
    public const string Traverse = "hardness";

    private const string Word = "laboratory";

    public string Kind => Word;

    public static string At(Guid test, string key) => Routes.Working(Word, test, key);

    public async Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation)
    {
        if (await tests.FindAsync(id, cancellation) is not { Test: var test })
        {
            return null;
        }

        List<NamedWorking> workings = [];
        if (test.Efficiency() is { } efficiency)
        {
            workings.Add(new NamedWorking(Efficiency, efficiency.Working));
        }

        if (test.Traverse() is { } traverse)
        {
            workings.Add(new NamedWorking(Traverse, traverse.Working));
        }

        return new RecordWorkings(test.Label, Routes.LaboratoryTest(id), workings);
    }
}
