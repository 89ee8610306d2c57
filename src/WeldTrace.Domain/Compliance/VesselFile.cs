using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Domain.Compliance;

/// <summary>The records behind a vessel, as the requirements ask for them.</summary>
internal sealed class VesselFile(
    Vessel vessel,
    DesignContent design,
    IReadOnlyCollection<Record> records
)
{
    // What isn't handed on with the vessel shows nothing to whoever gets it.
    private readonly HashSet<Guid> _known = [.. records.Select(r => r.Id)];

    private const string NothingWelded = "Nothing is welded yet.";

    public Vessel Vessel => vessel;

    public DesignContent Design => design;

    public IReadOnlyList<WeldRun> Runs =>
        [.. All<WeldRun>().Where(r => r.VesselId == vessel.Id).OrderBy(r => r.StartedAt)];

    public IReadOnlyList<Finding> Findings =>
        [.. All<Finding>().Where(f => f.VesselId == vessel.Id).OrderBy(f => f.Number)];

    public IEnumerable<T> All<T>()
        where T : Record => records.OfType<T>();

    /// <summary>Each run has to show it.</summary>
    public ComplianceEvidence EachRun(Func<WeldRun, bool> shows, string what) =>
        ComplianceEvidence.ForEach(
            Runs,
            r => shows(r) ? r : null,
            r => $"{r.Label}: {what}",
            NothingWelded
        );

    /// <summary>A rule of the floor was judged before each run, with the records that it was judged by.</summary>
    public ComplianceEvidence EachGate(string ruleId)
    {
        var evidence = EachRun(
            r => JudgedBefore(r, ruleId) is not null,
            $"{ruleId} was not judged."
        );
        foreach (var (run, verdict) in Runs.Select(r => (r, JudgedBefore(r, ruleId))))
        {
            foreach (var behind in (verdict?.Behind ?? []).Where(b => _known.Contains(b.Id)))
            {
                evidence.Add(behind);
            }

            if (verdict?.Concession is { } concession)
            {
                evidence.Add(concession);
                evidence.Remark($"{concession.Label} waives it for {run.Label}.");
            }
        }

        return evidence;
    }

    /// <summary>A test of a kind that passed, is signed and stands.</summary>
    public ComplianceEvidence PassedTest<T>(string what)
        where T : TestRecord =>
        ComplianceEvidence.ForEach(
            [what],
            _ =>
                All<T>()
                    .Where(t => t.VesselId == vessel.Id)
                    .LastOrDefault(t =>
                        t is { SignedAt: not null, Withdrawal: null, Verdict: Verdict.Pass }
                    ),
            _ => $"No {what} that passed is signed.",
            ""
        );

    private static RuleVerdict? JudgedBefore(WeldRun run, string ruleId) =>
        run.Gate.FirstOrDefault(v => v.RuleId == ruleId);
}
