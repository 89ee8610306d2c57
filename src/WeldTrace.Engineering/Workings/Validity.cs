namespace WeldTrace.Engineering;

/// <summary>Whether a computation was used inside the range for which its formula is meant.</summary>
/// <param name="IsWithin">True inside the range.</param>
/// <param name="Sentence">What the range is, or how it was left, in words for people.</param>
public sealed record Validity(bool IsWithin, string Sentence)
{
    /// <summary>Inside the range; the sentence may state the range.</summary>
    public static Validity Within(string sentence = "Inside the range of the formula.") =>
        new(true, sentence);

    /// <summary>Outside the range; the sentence says what was exceeded and what follows from it.</summary>
    public static Validity Outside(string sentence) => new(false, sentence);

    /// <summary>Within when the condition holds, otherwise outside with the same statement of the range.</summary>
    public static Validity When(bool holds, string range, string consequence) =>
        holds ? Within(range) : Outside($"{range} This is not kept: {consequence}");
}
