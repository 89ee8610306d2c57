namespace WeldTrace.Domain.Welding;

/// <summary>What a control chart says of one run among many. It asks for a review and rejects nothing.</summary>
public enum RunSignal
{
    /// <summary>The mean of the run lies beyond the limits of the individual values.</summary>
    ValueBeyondLimits,

    /// <summary>The difference from the run before lies beyond the limit of the moving range.</summary>
    JumpFromRunBefore,

    /// <summary>The exponentially weighted moving average lies beyond its limits.</summary>
    AverageBeyondLimits,
}

/// <summary>What a review of a signal came to.</summary>
public enum SignalConclusion
{
    /// <summary>A cause in the welding was found.</summary>
    CauseFound,

    /// <summary>What was measured or logged was wrong; the weld was not.</summary>
    MeasuringFault,

    /// <summary>It was looked for, and nothing was found.</summary>
    NoCauseFound,
}

/// <summary>Words about signals for people.</summary>
public static class SignalWords
{
    /// <summary>What was seen, for instance <c>jump from the run before</c>.</summary>
    public static string Of(RunSignal signal) =>
        signal switch
        {
            RunSignal.ValueBeyondLimits => "value beyond its limits",
            RunSignal.JumpFromRunBefore => "jump from the run before",
            RunSignal.AverageBeyondLimits => "weighted average beyond its limits",
            _ => throw new ArgumentOutOfRangeException(nameof(signal), signal, "Unknown signal."),
        };

    /// <summary>Several signals in a row; empty when there is none.</summary>
    public static string Of(IEnumerable<RunSignal> signals) =>
        string.Join("; ", signals.Select(Of));

    /// <summary>The word for what a review came to.</summary>
    public static string Of(SignalConclusion conclusion) =>
        conclusion switch
        {
            SignalConclusion.CauseFound => "cause found",
            SignalConclusion.MeasuringFault => "fault of measuring",
            SignalConclusion.NoCauseFound => "no cause found",
            _ => throw new ArgumentOutOfRangeException(
                nameof(conclusion),
                conclusion,
                "Unknown conclusion."
            ),
        };
}
