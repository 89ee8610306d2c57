using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Findings;

/// <summary>Running figures of quality: kinds of defect, places on the seam, and length of repair per length of weld (NASA-STD-5006A GWR 140-142).</summary>
/// <param name="Findings">Findings counted.</param>
/// <param name="ByType">Findings of each kind of defect, most first; kinds that nobody stated are told by where they come from.</param>
/// <param name="BySector">Findings with an angle, in twelve sectors of 30 degrees from the start of the pass.</param>
/// <param name="WithoutPlace">Findings without an angle on a seam.</param>
/// <param name="Repaired">Length of seam repaired.</param>
/// <param name="Welded">Length of seam welded.</param>
public sealed record FindingFigures(
    int Findings,
    IReadOnlyList<(string Type, int Count)> ByType,
    IReadOnlyList<int> BySector,
    int WithoutPlace,
    Length Repaired,
    Length Welded
)
{
    /// <summary>Sectors of a turn.</summary>
    public const int Sectors = 12;

    private const double FullTurn = 360;

    /// <summary>Length of repair as a part of the length of weld; null when nothing is welded.</summary>
    public double? RepairShare => Welded > Length.Zero ? Repaired / Welded : null;

    /// <summary>The figures of findings.</summary>
    /// <param name="findings">Findings of the time in question.</param>
    /// <param name="welded">Length of seam welded in that time; 0 or more.</param>
    public static FindingFigures Of(IReadOnlyCollection<Finding> findings, Length welded)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var sectors = new int[Sectors];
        foreach (var start in findings.Select(f => f.Place?.Start).OfType<Angle>())
        {
            sectors[(int)(start.Degrees % FullTurn / (FullTurn / Sectors))]++;
        }

        return new(
            findings.Count,
            [
                .. findings
                    .GroupBy(TypeWord)
                    .Select(g => (g.Key, g.Count()))
                    .OrderByDescending(g => g.Item2)
                    .ThenBy(g => g.Key, StringComparer.Ordinal),
            ],
            sectors,
            findings.Count - sectors.Sum(),
            Length.FromSi(findings.Sum(f => f.Repair?.Length.SiValue ?? 0)),
            welded
        );
    }

    private static string TypeWord(Finding finding) =>
        finding.Cause is { } cause
            ? FindingWords.DefectWord(cause.Type)
            : $"not stated ({FindingWords.OriginWord(finding.Origin)})";
}
