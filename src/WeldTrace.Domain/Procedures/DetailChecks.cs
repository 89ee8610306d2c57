using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Procedures;

internal static class DetailChecks
{
    private const int LongestWord = 60;

    /// <summary>What is wrong with the details, naming the field.</summary>
    public static IReadOnlyList<Refusal> CheckDetails(this ProcedureContent content)
    {
        var details = content.DetailsOrNone;
        var checks = new Checks()
            .That(
                details.OuterDiameter is null || details.OuterDiameter > Length.Zero,
                "diameter",
                "Give the outer diameter above zero, or leave it empty for plates.",
                nameof(details.OuterDiameter)
            )
            .That(
                details
                    is not { Penetration: Penetration.Partial, Class: JointClass.A or JointClass.B }
                    || !content.IsButt,
                "penetration",
                "A partial-penetration groove weld is not allowed for a joint of class A or B; weld the full thickness, or have the class of the joint settled.",
                nameof(details.Penetration),
                "NASA-STD-5006A w/Change 2 GWR 79"
            );
        CheckOther(checks, details.Other);
        NotNegative(checks, details.LargestGap, "gap", nameof(details.LargestGap));
        NotNegative(checks, details.LargestMismatch, "mismatch", nameof(details.LargestMismatch));
        NotNegative(
            checks,
            details.CleaningLimit,
            "time from cleaning to welding",
            nameof(details.CleaningLimit)
        );
        foreach (var particular in details.Particulars)
        {
            checks.Text(
                particular.Text,
                Particular.LongestText,
                $"{ProcedureFields.Name(particular.Field)}: give a text",
                $"{particular.Field}.{nameof(particular.Text)}"
            );
        }

        return checks.Refusals;
    }

    private static void CheckOther(Checks checks, OtherParent? other)
    {
        if (other is null)
        {
            return;
        }

        checks
            .Text(other.Alloy, LongestWord, "Give the alloy of the other side", "OtherAlloy")
            .Text(other.Temper, LongestWord, "Give the temper of the other side", "OtherTemper")
            .That(
                other.Thickness.Millimetres is > 0 and <= 200,
                "thickness",
                "Give the thickness of the other side, above 0 and at most 200 mm.",
                "OtherThickness"
            );
    }

    private static void NotNegative(Checks checks, Measured? value, string what, string field) =>
        checks.That(
            value is null || value.InUnit() >= 0,
            "negative",
            $"Give the largest {what} as zero or more, or leave it empty.",
            field
        );
}
