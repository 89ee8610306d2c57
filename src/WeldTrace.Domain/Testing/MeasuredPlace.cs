using WeldTrace.Engineering;
using WeldTrace.Engineering.Conformity;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Testing;

/// <summary>A place at which a vessel is measured before a pressure test and at zero again.</summary>
/// <param name="Name">What is measured there, for instance the outer diameter at mid-length.</param>
/// <param name="Before">Its value before the test, in mm, or in µm/m for a strain.</param>
/// <param name="StrainLength">Length that a strain stands for, in mm; null for a dimension.</param>
public sealed record MeasuredPlace(string Name, Measured Before, Measured? StrainLength);

/// <summary>What stayed at one place after the return to zero.</summary>
/// <param name="Place">The place.</param>
/// <param name="After">Its value at zero again, in the unit of the value before.</param>
/// <param name="Verdict">Verdict against the design's greatest permanent set.</param>
/// <param name="Sentence">The verdict in a sentence.</param>
/// <param name="Working">How it was worked out.</param>
public sealed record PlaceResult(
    MeasuredPlace Place,
    Measured After,
    Verdict Verdict,
    string Sentence,
    Working Working
);

/// <summary>A stage as judged from its readings.</summary>
/// <param name="Verdict">The worst of its parts.</param>
/// <param name="Sentence">The verdict in a sentence, or one for each part that decides it.</param>
/// <param name="Workings">How each part was worked out.</param>
internal sealed record StageJudgement(
    Verdict Verdict,
    string Sentence,
    IReadOnlyList<Working> Workings
)
{
    /// <summary>The judgement of a stage that has several parts: the worst decides, and the parts that are as bad say so.</summary>
    public static StageJudgement Worst(
        IReadOnlyList<(Verdict Verdict, string Sentence, Working Working)> parts
    )
    {
        var worst = Verdicts.Worst(parts.Select(p => p.Verdict));
        return new(
            worst,
            string.Join(' ', parts.Where(p => p.Verdict == worst).Select(p => p.Sentence)),
            [.. parts.Select(p => p.Working)]
        );
    }
}
