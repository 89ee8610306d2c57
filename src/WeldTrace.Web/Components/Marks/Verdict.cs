namespace WeldTrace.Web.Components.Marks;

/// <summary>Outcome of comparing a measured value with its limit.</summary>
public enum Verdict
{
    /// <summary>Nothing has been compared yet.</summary>
    NotJudged,

    /// <summary>Inside the limit, uncertainty included.</summary>
    Meets,

    /// <summary>Outside the limit, uncertainty included.</summary>
    Fails,

    /// <summary>The limit lies inside the uncertainty band; this is not a pass.</summary>
    Undecided,
}
