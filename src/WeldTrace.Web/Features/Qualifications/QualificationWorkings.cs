using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Qualification;
using WeldTrace.Engineering;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Qualifications;

/// <summary>How the figures of a qualification record follow: what its plan asks, and what its range covers.</summary>
public sealed class QualificationWorkings(QualificationReader reader) : IWorkings
{
    public const string Tensile = "tensile";
    public const string Former = "former";

    private const string Word = "qualifications";

    public string Kind => Word;

    public static string At(Guid qualification, string key) =>
        Routes.Working(Word, qualification, key);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<NamedWorking> Of(QualificationRecords records, LimitTable ruleSet)
    {
        ArgumentNullException.ThrowIfNull(records);
        var (plan, content) = (records.Record.Plan, records.Revision.Content);
        return
        [
            .. Asked(
                Tensile,
                plan.Tensile is { } tensile ? QualificationWorking.Of(plan, tensile) : null
            ),
            .. Asked(
                Former,
                plan.Former is { } former ? QualificationWorking.Of(plan, former, content) : null
            ),
            .. QualificationWorking
                .OfRange(records.Record, content, ruleSet)
                .Select(w => new NamedWorking(w.Key, w.Working)),
        ];
    }

    public async Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation) =>
        await reader.FindAsync(id, cancellation) is { } view
            ? new RecordWorkings(view.Records.Record.Label, Routes.Qualification(id), view.Workings)
            : null;

    private static IEnumerable<NamedWorking> Asked(string key, Working? working) =>
        working is null ? [] : [new NamedWorking(key, working)];
}
