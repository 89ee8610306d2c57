using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Testing;

/// <summary>Judges what stayed after the return to zero, by a dimension or by a strain.</summary>
internal static class SetEvaluation
{
    private const double LargestRatio = 1.2;
    private const double LargestStrain = 20000;
    private const double LargestLength = 20000;

    public static void CheckBefore(Checks checks, PressureSetUp setUp)
    {
        Reading.Between(
            checks,
            setUp.DimensionBefore,
            setUp.IsStrain ? -LargestStrain : 1,
            setUp.IsStrain ? LargestStrain : LargestLength,
            setUp.IsStrain ? "Strain before" : "Dimension before",
            nameof(setUp.DimensionBefore)
        );
        Reading.Between(
            checks,
            setUp.DimensionUncertainty,
            setUp.IsStrain ? 0.01 : 0.0001,
            setUp.IsStrain ? 1000 : 10,
            setUp.IsStrain
                ? "Standard uncertainty of the strain"
                : "Standard uncertainty of the dimension",
            nameof(setUp.DimensionUncertainty)
        );
        if (setUp.IsStrain)
        {
            Reading.Between(
                checks,
                setUp.StrainLength,
                1,
                LargestLength,
                "Length that the strain stands for",
                nameof(setUp.StrainLength)
            );
        }
    }

    public static void Check(Checks checks, StageReading reading, PressureSetUp setUp)
    {
        checks.That(
            reading.Dimension is null || reading.Dimension.Unit == setUp.DimensionBefore.Unit,
            "unit",
            $"{setUp.DimensionName} was read in {setUp.DimensionBefore.Unit} before the test; enter it in that unit again.",
            nameof(reading.Dimension)
        );
        if (!checks.AllHold)
        {
            return;
        }

        if (setUp.IsStrain)
        {
            Reading.Between(
                checks,
                reading.Dimension,
                -LargestStrain,
                LargestStrain,
                "Strain",
                nameof(reading.Dimension)
            );
            return;
        }

        CheckDimension(checks, reading, setUp);
    }

    public static (Verdict, string, Working) Judge(
        StageReading reading,
        PressureSetUp setUp,
        PressurePlan plan
    )
    {
        var allowed = WrittenLimit.Exact(plan.AllowedPermanentSet.Millimetres, "mm");
        var (judgement, working) = setUp.IsStrain
            ? ByStrain(reading, setUp, allowed)
            : ByDimension(reading, setUp, allowed);
        return (
            judgement.Verdict,
            $"Permanent set of {setUp.DimensionName}: {judgement.Sentence}",
            working
        );
    }

    /// <summary>A dimension that changed by a fifth was read in another unit, or is another dimension.</summary>
    private static void CheckDimension(Checks checks, StageReading reading, PressureSetUp setUp)
    {
        Reading.Between(
            checks,
            reading.Dimension,
            1,
            LargestLength,
            "Dimension",
            nameof(reading.Dimension)
        );
        if (!checks.AllHold)
        {
            return;
        }

        var ratio = reading.Dimension!.InUnit() / setUp.DimensionBefore.InUnit();
        checks.That(
            ratio is < LargestRatio and > 1 / LargestRatio,
            "unit",
            $"{setUp.DimensionName} was {setUp.DimensionBefore} before the test and is {reading.Dimension} now; that looks like another unit or another dimension. Enter it in {setUp.DimensionBefore.Unit}.",
            nameof(reading.Dimension)
        );
    }

    private static (Judgement, Working) ByDimension(
        StageReading reading,
        PressureSetUp setUp,
        WrittenLimit allowed
    )
    {
        var set = PermanentSet
            .Evaluate(
                new SetMeasurement(
                    setUp.DimensionName,
                    Length.FromMillimetres(setUp.DimensionBefore.InUnit()),
                    Length.FromMillimetres(reading.Dimension!.InUnit()),
                    Length.FromMillimetres(setUp.DimensionUncertainty.InUnit()),
                    allowed
                )
            )
            .Value;
        return (set.Judgement, set.Working);
    }

    private static (Judgement, Working) ByStrain(
        StageReading reading,
        PressureSetUp setUp,
        WrittenLimit allowed
    )
    {
        var set = PermanentStrain
            .Evaluate(
                new StrainMeasurement(
                    setUp.DimensionName,
                    setUp.DimensionBefore.InUnit(),
                    reading.Dimension!.InUnit(),
                    setUp.DimensionUncertainty.InUnit(),
                    Length.FromMillimetres(setUp.StrainLength!.InUnit()),
                    allowed
                )
            )
            .Value;
        return (set.Judgement, set.Working);
    }
}
