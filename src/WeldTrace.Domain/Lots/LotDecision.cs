using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Domain.Lots;

// Samples decide: floor rule F20.
public sealed partial class ProductionLot
{
    /// <summary>What the signature under the acceptance means.</summary>
    public const string AcceptanceMeaning =
        "I have seen the results of the samples and accept this lot on the statement above.";

    /// <summary>Whether every sample has passed, and no laboratory test speaks against the lot.</summary>
    public bool HasPassed =>
        Samples.Count > 0
        && Samples.All(s => ResultOf(s)?.Verdict == Verdict.Pass)
        && LaboratoryStanding.All(r => r.Verdict == Verdict.Pass);

    /// <summary>The newest laboratory result of each sample and method; a test made again takes the place of the one before.</summary>
    public IEnumerable<LaboratoryResult> LaboratoryStanding =>
        (Laboratory ?? []).GroupBy(r => (r.Sample, r.Method)).Select(g => g.Last());

    /// <summary>Takes the signed test of a sample. Anything but a pass holds every vessel of the lot.</summary>
    /// <param name="result">What the test showed.</param>
    /// <param name="test">The test.</param>
    /// <param name="vessels">All vessels of the lot.</param>
    /// <param name="actor">Who signed the test.</param>
    /// <param name="at">UTC instant.</param>
    /// <returns>The findings that hold the other vessels; the sample's own comes from its test.</returns>
    public IReadOnlyList<Finding> TakeResult(
        SampleResult result,
        Record test,
        IReadOnlyList<Vessel> vessels,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(test);
        ArgumentNullException.ThrowIfNull(vessels);
        if (IsSealed || SampleOf(result.VesselId)?.Kind != result.Kind)
        {
            return [];
        }

        Results = [.. Results, result];
        State = StateByResults();
        Note(
            actor,
            at,
            result.Verdict == Verdict.Pass ? "sample passed" : "sample did not pass",
            $"{result.Serial}: {result.Sentence}"
        );
        return result.Verdict == Verdict.Pass
            ? []
            : [.. vessels.Where(v => v.Id != result.VesselId && !v.IsFinal).Select(Hold)];

        Finding Hold(Vessel vessel) =>
            Finding.Open(
                vessel,
                (vessel.NextStep ?? vessel.Steps[^1]).Sequence,
                FindingOrigin.LotSample,
                $"Sample {result.Serial} of lot {Number} ({SamplePlan.KindWord(result.Kind)}) did not pass: {result.Sentence}",
                test,
                null,
                actor,
                at
            );
    }

    /// <summary>Takes a signed laboratory test that stands for the lot. The vessels are held by the findings of the test.</summary>
    /// <param name="result">What the test showed.</param>
    /// <param name="actor">Who signed the test.</param>
    /// <param name="at">UTC instant.</param>
    public void TakeLaboratory(LaboratoryResult result, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (IsSealed)
        {
            return;
        }

        Laboratory = [.. Laboratory ?? [], result];
        State = StateByResults();
        Note(
            actor,
            at,
            result.Verdict == Verdict.Pass
                ? "laboratory test passed"
                : "laboratory test did not pass",
            $"{result.Sample}, {result.Method}: {result.Sentence}"
        );
    }

    /// <summary>Accepts the lot; nothing of it is changed afterwards.</summary>
    /// <param name="statement">What was shown, as it stood on the screen.</param>
    /// <param name="weldedBy">Everyone who welded on a vessel of the lot.</param>
    /// <param name="actor">Inspector or quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Accept(
        LotStatement statement,
        IReadOnlyCollection<Guid> weldedBy,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(statement);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.Inspector, Role.QualityManager)
            .Add(SecondPerson.Check(weldedBy, actor))
            .That(State != LotState.Accepted, "state", $"Lot {Number} is accepted already.")
            .That(Samples.Count > 0, "F20", $"The samples of lot {Number} are not chosen.");
        foreach (var sample in Samples.Where(s => ResultOf(s)?.Verdict != Verdict.Pass))
        {
            checks.That(
                false,
                "F20",
                ResultOf(sample) is { } result
                    ? $"Sample {sample.Serial} ({SamplePlan.KindWord(sample.Kind)}) did not pass: {result.Sentence}"
                    : $"Sample {sample.Serial} ({SamplePlan.KindWord(sample.Kind)}) has no signed result yet.",
                null,
                Source
            );
        }

        foreach (var result in LaboratoryStanding.Where(r => r.Verdict != Verdict.Pass))
        {
            checks.That(
                false,
                "F20",
                $"Laboratory sample {result.Sample} ({result.Method}) did not pass: {result.Sentence}",
                null,
                Source
            );
        }

        if (checks.AllHold)
        {
            Note(actor, at, "production lot accepted", string.Join(" ", statement.Sentences));
            State = LotState.Accepted;
            Acceptance = new(actor.PersonId, actor.PrintedName, at, statement);
        }

        return checks.ToOutcome();
    }

    private LotState StateByResults() =>
        Samples.Any(s => ResultOf(s) is { Verdict: not Verdict.Pass })
        || LaboratoryStanding.Any(r => r.Verdict != Verdict.Pass)
            ? LotState.Failed
        : Samples.Count == 0 ? LotState.Gathering
        : LotState.Sampling;
}
