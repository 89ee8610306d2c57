namespace WeldTrace.Engineering.Conformity;

/// <summary>Outcome of a comparison with a limit.</summary>
public enum Verdict
{
    /// <summary>The limit is met, also at the unfavourable end of the uncertainty interval.</summary>
    Pass,

    /// <summary>The limit is not met, not even at the favourable end of the uncertainty interval.</summary>
    Fail,

    /// <summary>The uncertainty interval straddles the limit; this is not a pass.</summary>
    Undecided,
}

/// <summary>Combines verdicts.</summary>
public static class Verdicts
{
    /// <summary>Fail when any fails, otherwise undecided when any is undecided or there is none, otherwise pass.</summary>
    public static Verdict Worst(IEnumerable<Verdict> verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        var seen = verdicts.ToHashSet();
        return seen.Contains(Verdict.Fail) ? Verdict.Fail
            : seen.Contains(Verdict.Undecided) || seen.Count == 0 ? Verdict.Undecided
            : Verdict.Pass;
    }
}
