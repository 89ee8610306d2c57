using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Findings;

/// <summary>Words about findings for people.</summary>
public static class FindingWords
{
    /// <summary>What a decision does to the vessel, for whoever is about to take it.</summary>
    /// <param name="kind">Decision.</param>
    /// <param name="step">Step at which the finding arose; null when the route no longer has it.</param>
    public static string Consequence(DispositionKind kind, RouteStep? step) =>
        kind switch
        {
            DispositionKind.UseAsIs => step is { State: StepState.Failed }
                ? $"Step {step.Sequence} counts as waived, and the vessel goes on as it is once the finding is closed."
                : "The vessel goes on as it is once the finding is closed.",
            DispositionKind.Rework =>
                $"Step {step?.Sequence} is opened again and done anew, so that it fully conforms, and so are the tests and examinations after it; the finding is closed once the step is done.",
            DispositionKind.Repair =>
                $"Step {step?.Sequence} is opened again and mended by an agreed method, and the tests and examinations after it are done anew; the vessel is acceptable without fully conforming. The finding is closed once the step is done.",
            DispositionKind.Scrap =>
                "The vessel is rejected for ever. Nothing more is recorded on its route; this can't be undone.",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown decision."),
        };

    /// <summary>The word for where a finding comes from.</summary>
    public static string OriginWord(FindingOrigin origin) =>
        origin switch
        {
            FindingOrigin.Excursion => "excursion",
            FindingOrigin.InterruptedRun => "interrupted run",
            FindingOrigin.LeakTest => "leak test",
            FindingOrigin.PressureTest => "pressure test",
            FindingOrigin.Examination => "examination",
            FindingOrigin.Report => "report",
            FindingOrigin.LotSample => "sample of the lot",
            _ => throw new ArgumentOutOfRangeException(nameof(origin), origin, "Unknown origin."),
        };
}
