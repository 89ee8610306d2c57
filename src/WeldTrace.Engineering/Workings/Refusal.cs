namespace WeldTrace.Engineering;

/// <summary>Kind of reason for which a computation is refused.</summary>
public enum RefusalReason
{
    /// <summary>A value that must be above zero is not.</summary>
    NotPositive,

    /// <summary>A value lies outside its physical range, or contradicts another one.</summary>
    OutOfRange,

    /// <summary>The formula does not hold for these values.</summary>
    OutsideValidity,

    /// <summary>There are not enough data.</summary>
    TooFewData,

    /// <summary>An iterative solution did not converge.</summary>
    NoConvergence,
}

/// <summary>Why a computation cannot be done: what is wrong, where, and how to mend it.</summary>
/// <param name="Reason">Kind of reason.</param>
/// <param name="Where">Name of the value in words, for instance <c>travel speed</c>.</param>
/// <param name="What">What is wrong, a sentence.</param>
/// <param name="Mend">How to mend it, a sentence.</param>
public sealed record Refusal(RefusalReason Reason, string Where, string What, string Mend);
