namespace WeldTrace.Engineering.Conformity;

/// <summary>A verdict with everything that led to it.</summary>
/// <param name="Verdict">The outcome.</param>
/// <param name="Measured">The value, in the unit of the limit.</param>
/// <param name="Rounded">The value rounded to the written decimals of the limit.</param>
/// <param name="Lower">Lower limit, if there is one.</param>
/// <param name="Upper">Upper limit, if there is one.</param>
/// <param name="Sentence">The judgement in words.</param>
/// <param name="Working">How it was judged.</param>
public sealed record Judgement(
    Verdict Verdict,
    Measured Measured,
    double Rounded,
    WrittenLimit? Lower,
    WrittenLimit? Upper,
    string Sentence,
    Working Working
) : IWorked;
