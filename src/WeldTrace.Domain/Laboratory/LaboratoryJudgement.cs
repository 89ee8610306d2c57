using System.Globalization;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;
using Written = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Laboratory;

/// <summary>Judges a laboratory test by the same rules as the specimens of a qualification.</summary>
internal static class LaboratoryJudgement
{
    public const int MostRows = 60;
    private const string Rows = "Rows";

    /// <summary>Lines of the specimens and figures; null when the entry is refused.</summary>
    public static IReadOnlyList<LaboratoryLine>? Of(Checks checks, LaboratoryEntry entry) =>
        entry switch
        {
            { Tensile: { } tensile } => Tensile(checks, tensile),
            { Bend: { } bend } => Bend(checks, bend),
            { Hardness: { } hardness } => Hardness(checks, hardness),
            _ => throw new ArgumentException("Nothing was measured.", nameof(entry)),
        };

    /// <summary>Strength, mean and joint efficiency of a tensile test; null when its numbers can't be.</summary>
    public static JointEfficiency? Efficiency(TensileSeries series) =>
        JointEfficiency
            .Compute(
                [.. series.Specimens.Select(r => r.Entry.Specimen)],
                Pressure.FromMegapascals(series.Parent.InUnit()),
                series.Reference
            )
            .TryGet(out var efficiency)
            ? efficiency
            : null;

    /// <summary>The evaluated traverse, or why there is none.</summary>
    public static Engineering.Computed<HardnessTraverse> Traverse(HardnessSeries series) =>
        HardnessTraverse.Compute(
            [
                .. series.Points.Select(p => new HardnessPoint(
                    Length.FromMillimetres(p.Position.InUnit()),
                    p.Hardness.InUnit()
                )),
            ],
            series.Parent.InUnit()
        );

    private static List<LaboratoryLine>? Tensile(Checks checks, TensileSeries series)
    {
        Count(checks, series.Specimens.Count, 1);
        Positive(checks, series.Parent, "strength of the parent", nameof(series.Parent));
        NotNegative(
            checks,
            series.ForceUncertainty,
            "uncertainty of the force",
            "ForceUncertainty"
        );
        NotNegative(checks, series.SizeUncertainty, "uncertainty of the sizes", "SizeUncertainty");
        checks.That(
            series.Required.Megapascals > 0,
            "required",
            "Give the least strength, above zero.",
            "Required"
        );
        List<LaboratoryLine> lines = [];
        foreach (var row in series.Specimens)
        {
            Mark(checks, row.Mark);
            var judged = SpecimenJudgement.Tensile(
                checks,
                series.Required,
                row.Entry,
                checks.AllHold ? Expanded(series, row.Entry) : null
            );
            if (judged is not null)
            {
                lines.Add(
                    new(
                        row.Mark,
                        Shown(row.Entry.Specimen.Strength.Megapascals, "MPa", 1),
                        judged.Verdict,
                        judged.Sentence
                    )
                );
            }
        }

        if (!checks.AllHold || Efficiency(series) is not { } efficiency)
        {
            return null;
        }

        lines.Add(
            Figure("Mean strength", efficiency.Strengths.Average(s => s.Megapascals), "MPa", 1)
        );
        lines.Add(Figure("Mean joint efficiency", efficiency.Mean, "", 3));
        lines.Add(Figure("Smallest joint efficiency", efficiency.Minimum, "", 3));
        return lines;
    }

    private static List<LaboratoryLine>? Bend(Checks checks, BendSeries series)
    {
        Count(checks, series.Specimens.Count, 1);
        Positive(checks, series.RollerGap, "distance of the rollers", nameof(series.RollerGap));
        List<LaboratoryLine> lines = [];
        foreach (var row in series.Specimens)
        {
            Mark(checks, row.Mark);
            Positive(checks, row.Width, $"width of {row.Mark}", Rows);
            Positive(checks, row.Thickness, $"thickness of {row.Mark}", Rows);
            if (SpecimenJudgement.Bend(checks, series.Required, row.Entry) is { } judged)
            {
                lines.Add(
                    new(row.Mark, row.Entry.Angle.ToString(), judged.Verdict, judged.Sentence)
                );
            }
        }

        return checks.AllHold ? lines : null;
    }

    private static IReadOnlyList<LaboratoryLine>? Hardness(Checks checks, HardnessSeries series)
    {
        Count(checks, series.Points.Count, 3);
        checks
            .Text(series.Scale, 20, "Give the scale, for instance HV 10", nameof(series.Scale))
            .Text(series.Block, 80, "Name the reference block", nameof(series.Block));
        Positive(checks, series.DwellSeconds, "dwell", nameof(series.DwellSeconds));
        NotNegative(
            checks,
            series.Depth,
            "distance of the row from the surface",
            nameof(series.Depth)
        );
        var traverse = Traverse(series);
        foreach (var refusal in traverse.Refusals)
        {
            checks.That(
                false,
                "traverse",
                $"Traverse, {refusal.Where}: {refusal.What} {refusal.Mend}",
                Rows
            );
        }

        if (!checks.AllHold)
        {
            return null;
        }

        var found = traverse.Value;
        var judged = SpecimenJudgement.Value(
            checks,
            new ValueEntry(new Written(Digits(found.Minimum, 1), "HV"), series.AtLeast, null, "")
        )!;
        return
        [
            new(
                "Smallest hardness",
                Shown(found.Minimum, "HV", 1),
                judged.Verdict,
                judged.Sentence
            ),
            Figure("Its distance from the weld centre", found.Place.Millimetres, "mm", 1),
            Figure("Ratio to the parent", found.RatioToParent, "", 3),
            found.SoftenedWidth is { } width
                ? Figure("Width softened below 0.9 of the parent", width.Millimetres, "mm", 1)
                : new(
                    "Width softened below 0.9 of the parent",
                    "not inside the traverse",
                    null,
                    ""
                ),
        ];
    }

    private static double Expanded(TensileSeries series, TensileEntry entry)
    {
        var specimen = entry.Specimen;
        var size = Length.FromMillimetres(series.SizeUncertainty.InUnit());
        return StandardUncertainty.CoverageFactor
            * specimen.Strength.Megapascals
            * specimen.RelativeUncertainty(
                Force.FromKilonewtons(series.ForceUncertainty.InUnit()),
                size,
                size
            );
    }

    private static LaboratoryLine Figure(string name, double value, string unit, int decimals) =>
        new(name, Shown(value, unit, decimals), null, "");

    private static string Shown(double value, string unit, int decimals) =>
        $"{Digits(value, decimals)} {unit}".TrimEnd();

    private static string Digits(double value, int decimals) =>
        value.ToString($"F{decimals}", CultureInfo.InvariantCulture);

    private static void Count(Checks checks, int count, int least) =>
        checks.That(
            count >= least && count <= MostRows,
            "rows",
            $"Enter {least} to {MostRows} rows; {count} are filled.",
            Rows
        );

    private static void Mark(Checks checks, string mark) =>
        checks.Text(mark, 40, "Give each specimen its mark", Rows);

    private static void Positive(Checks checks, Written value, string what, string field) =>
        checks.That(value.InUnit() > 0, "positive", $"Give the {what}, above zero.", field);

    private static void NotNegative(Checks checks, Written value, string what, string field) =>
        checks.That(value.InUnit() >= 0, "negative", $"Give the {what}, zero or more.", field);
}
