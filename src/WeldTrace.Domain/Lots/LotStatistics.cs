using System.Globalization;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Domain.Lots;

/// <summary>
/// What the samples and proof tests of a lot show: for bursts a lower one-sided normal tolerance bound (exact factor by the noncentral
/// t, <see cref="ToleranceFactor"/>), for proof tests the reliability of a success run (<see cref="SuccessRun"/>).
/// </summary>
public static class LotStatistics
{
    /// <summary>The statement, with the workings of its figures.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="meop">Maximum expected operating pressure of the design, gauge.</param>
    /// <param name="proofsPassed">Vessels of the lot that passed their proof test; 0 or more.</param>
    /// <param name="proofsFailed">Vessels of the lot that did not; 0 or more.</param>
    public static (LotStatement Statement, IReadOnlyList<Working> Workings) State(
        ProductionLot lot,
        Pressure meop,
        int proofsPassed,
        int proofsFailed
    )
    {
        ArgumentNullException.ThrowIfNull(lot);
        var (plan, workings) = (lot.Plan, new List<Working>());
        var results = lot
            .Samples.Where(s => s.Kind == SampleKind.Burst)
            .Select(lot.ResultOf)
            .OfType<SampleResult>()
            .Where(r => r.Burst is not null)
            .ToList();
        IReadOnlyList<Pressure> pressures = [.. results.Select(r => r.Burst!.Value)];
        var met = results.Count(r => r.Verdict == Engineering.Conformity.Verdict.Pass);
        List<string> sentences = [Sections(lot), Laboratory(lot)];
        var bound = Bound(plan, pressures, met, plan.LeastBurst(meop), sentences, workings);
        var reliability = Proof(plan, proofsPassed, proofsFailed, sentences, workings);
        return (
            new LotStatement(
                plan.Coverage,
                plan.Confidence,
                pressures,
                plan.LeastBurst(meop),
                bound,
                proofsPassed,
                proofsFailed,
                reliability,
                [.. sentences.Where(s => s.Length > 0)]
            ),
            workings
        );
    }

    private static string Sections(ProductionLot lot)
    {
        var sections = lot.Samples.Where(s => s.Kind == SampleKind.Section).ToList();
        var passed = sections.Count(s =>
            lot.ResultOf(s)?.Verdict == Engineering.Conformity.Verdict.Pass
        );
        return sections.Count == 0
            ? ""
            : $"Sections: {passed} of {sections.Count} samples met their limits. They show the places that were cut; nothing is said about the others by statistics.";
    }

    private static string Laboratory(ProductionLot lot)
    {
        var tests = lot.LaboratoryStanding.ToList();
        return tests.Count == 0
            ? ""
            : $"Laboratory: {tests.Count(t => t.Verdict == Engineering.Conformity.Verdict.Pass)} of {tests.Count} tests passed ({string.Join(", ", tests.Select(t => $"{t.Sample} {t.Method}"))}).";
    }

    private static Pressure? Bound(
        SamplePlan plan,
        IReadOnlyList<Pressure> bursts,
        int met,
        Pressure? least,
        List<string> sentences,
        List<Working> workings
    )
    {
        if (least is not { } required)
        {
            return null;
        }

        var share = Percent(plan.Coverage);
        sentences.Add(
            $"Burst: {met} of {bursts.Count} samples reached the {Bar(required)} that the design asks for."
        );
        switch (bursts.Count)
        {
            case 0:
                sentences.Add(
                    "No vessel was burst, so nothing is stated about the burst pressure."
                );
                return null;
            case 1:
                sentences.Add(
                    $"One burst of {Bar(bursts[0])} shows what this vessel held. One value has no spread, so no bound for {share} of the lot can be given at any confidence."
                );
                return null;
            default:
                return Bounded(plan, bursts, required, sentences, workings);
        }
    }

    private static Pressure? Bounded(
        SamplePlan plan,
        IReadOnlyList<Pressure> bursts,
        Pressure required,
        List<string> sentences,
        List<Working> workings
    )
    {
        var sample = Sample.Of([.. bursts.Select(b => b.Bar)]);
        var computed = ToleranceFactor.TryOneSided(
            bursts.Count,
            (double)plan.Coverage,
            (double)plan.Confidence
        );
        if (!computed.TryGet(out var factor))
        {
            sentences.Add("The tolerance factor was not found; no bound is stated.");
            return null;
        }

        var bound = ToleranceFactor.LowerLimit(sample.Mean, sample.StandardDeviation, factor.Value);
        workings.Add(computed.Working);
        workings.Add(
            Working
                .Of("Lower bound of the burst pressure", "P_L = mean − k·s")
                .Input("mean", "mean burst pressure", sample.Mean, "bar")
                .Input("s", "standard deviation", sample.StandardDeviation, "bar")
                .Input("k", "one-sided factor", factor.Value)
                .Result("P_L", "lower bound", bound, "bar")
                .From("One-sided normal tolerance bound; holds for normal data.")
                .Build()
        );
        sentences.Add(
            $"With {Percent(plan.Confidence)} confidence {Percent(plan.Coverage)} of the lot burst above {Number(bound)} bar (normal data; {bursts.Count} bursts, mean {Number(sample.Mean)} bar, factor {factor.Value.ToString("0.###", CultureInfo.InvariantCulture)})."
        );
        sentences.Add(
            bursts.Count == 2
                ? "Two bursts say next to nothing about the spread: the factor is so large that the bound is a formality, not a strength."
                : ""
        );
        sentences.Add(
            bound >= required.Bar
                ? $"The bound lies above the {Bar(required)} asked for."
                : $"The bound lies below the {Bar(required)} asked for: the samples reached it, but for the whole lot it is not shown at this coverage and confidence."
        );
        return Pressure.FromBar(bound);
    }

    private static double? Proof(
        SamplePlan plan,
        int passed,
        int failed,
        List<string> sentences,
        List<Working> workings
    )
    {
        var trials = passed + failed;
        var confidence = (double)plan.Confidence;
        if (trials == 0)
        {
            sentences.Add("Proof: no vessel of the lot has been proof-tested yet.");
            return null;
        }

        if (failed > 0)
        {
            sentences.Add(
                $"Proof: {failed} of {trials} vessels did not pass, so there is no success run; each of them has its own finding."
            );
            return null;
        }

        var reliability = SuccessRun.Reliability(trials, confidence);
        workings.Add(
            Working
                .Of("Reliability shown by proof tests without failure", "R = (1 − C)^(1/n)")
                .Input("n", "vessels that passed", trials)
                .Input("C", "confidence", confidence)
                .Result("R", "reliability shown", reliability)
                .From("Success run; binomial distribution, no failure.")
                .Build()
        );
        sentences.Add(
            $"Proof: {passed} of {trials} vessels passed. With {Percent(plan.Confidence)} confidence at least {(reliability * 100).ToString("0.0", CultureInfo.InvariantCulture)} % of vessels made like these pass."
        );
        return reliability;
    }

    private static string Percent(decimal share) =>
        (share * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %";

    private static string Bar(Pressure pressure) => Number(pressure.Bar) + " bar";

    private static string Number(double bar) => bar.ToString("0.#", CultureInfo.InvariantCulture);
}
