using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.Materials;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.Joints;

/// <summary>Every row of i_joint.csv: re-evaluated in double precision; published figures are for plausibility only.</summary>
public sealed class JointChecksTests
{
    private static readonly CheckTable Table = AddPublished(
        new CheckTable("i_joint.csv")
            .Number("I1", "cross-weld tensile strength", row => Specimen(row).Strength.Megapascals)
            .Number("I2.1", "joint efficiency", Efficiency)
            .Number("I2.4", "mean joint efficiency", row => Set(row).Mean)
            .Number("I2.4", "minimum joint efficiency", row => Set(row).Minimum)
            .Number("I3", "relative standard uncertainty", Uncertainty)
            .Number("I4", "minimum hardness", row => Traverse(row).Minimum)
            .Number("I4", "position of the minimum", row => Traverse(row).Place.Millimetres)
            .Number("I4", "minimum/parent", row => Traverse(row).RatioToParent)
            .Number("I4", "softened width", row => Traverse(row).SoftenedWidth!.Value.Millimetres)
            .Number(
                "I5",
                "HV1",
                row =>
                    HardnessTraverse.VickersOf(
                        Force.FromNewtons(row["F_N"]),
                        Length.FromMillimetres(row["d_mm"])
                    )
            )
            .Number(
                "I6",
                "2219-T87 typical ultimate strength",
                _ => AlloyLibrary.Find("2219-T87")!.TypicalUltimate!.Value.Megapascals
            )
            .Number(
                "I6",
                "2219-T87 typical yield strength",
                _ => AlloyLibrary.Find("2219-T87")!.TypicalYield!.Value.Megapascals
            )
            .Number(
                "I6",
                "7075-T6 typical ultimate strength",
                _ => AlloyLibrary.Find("7075-T6")!.TypicalUltimate!.Value.Megapascals
            )
    );

    public static TheoryData<int, string> Data => Table.Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void Joint_CheckedRow_MatchesExpected(int index, string label)
    {
        Assert.Equal(label, Table.Rows[index].ToString());
        Table.Run(index);
    }

    private static CheckTable AddPublished(CheckTable table)
    {
        foreach (var figure in PublishedJoints.All)
        {
            _ =
                figure.High > figure.Low
                    ? table.Text(
                        "I6",
                        figure.Subject,
                        _ => FormattableString.Invariant($"{figure.Low:F2}..{figure.High:F2}")
                    )
                    : table.Number("I6", figure.Subject, _ => figure.Low);
        }

        return table;
    }

    private static TensileSpecimen Specimen(CheckRow row) =>
        Specimen(row["F_N"], row["w_mm"], row["t_mm"]);

    private static TensileSpecimen Specimen(double newtons, double width, double thickness) =>
        new(
            Force.FromNewtons(newtons),
            Length.FromMillimetres(width),
            Length.FromMillimetres(thickness)
        );

    private static double Efficiency(CheckRow row) =>
        JointEfficiency
            .Compute(
                [Specimen(row["sigma_weld_MPa"] * 100, 10, 10)],
                Pressure.FromMegapascals(row["sigma_parent_MPa"]),
                ParentReference.SamePlate
            )
            .Value.Mean;

    private static JointEfficiency Set(CheckRow row)
    {
        var (forces, widths, thicknesses) = (row.List("F_N"), row.List("w_mm"), row.List("t_mm"));
        return JointEfficiency
            .Compute(
                [.. forces.Select((force, i) => Specimen(force, widths[i], thicknesses[i]))],
                Pressure.FromMegapascals(row["sigma_parent_MPa"]),
                ParentReference.SamePlate
            )
            .Value;
    }

    private static double Uncertainty(CheckRow row) =>
        Specimen(row)
            .RelativeUncertainty(
                Force.FromNewtons(row["u_F"]),
                Length.FromMillimetres(row["u_w"]),
                Length.FromMillimetres(row["u_t"])
            );

    private static HardnessTraverse Traverse(CheckRow row)
    {
        var hardness = row.List("HV");
        var points = row.List("x_mm")
            .Select((x, i) => new HardnessPoint(Length.FromMillimetres(x), hardness[i]));
        return HardnessTraverse.Compute([.. points], row["parent_HV"]).Value;
    }
}
