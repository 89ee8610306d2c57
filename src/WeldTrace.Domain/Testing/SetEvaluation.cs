using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Testing;

/// <summary>Judges what stayed after the return to zero, by dimensions or by strains.</summary>
internal static class SetEvaluation
{
    private const double LargestRatio = 1.2;
    private const double LargestStrain = 20000;
    private const double LargestLength = 20000;

    public static void CheckBefore(Checks checks, PressureSetUp setUp)
    {
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
        var places = setUp.Places();
        checks
            .That(
                places.Count <= PressureSetUp.MostPlaces,
                "places",
                $"At most {PressureSetUp.MostPlaces} places are measured in one test.",
                nameof(setUp.FurtherPlaces)
            )
            .That(
                places.DistinctBy(p => p.Name.Trim().ToUpperInvariant()).Count() == places.Count,
                "places",
                "Two places bear the same name; name each by where it lies.",
                nameof(setUp.FurtherPlaces)
            );
        foreach (var (index, place) in places.Index())
        {
            CheckPlace(checks, setUp, place, index);
        }
    }

    public static void Check(Checks checks, StageReading reading, PressureSetUp setUp)
    {
        var (places, after) = (setUp.Places(), reading.Dimensions());
        checks.That(
            after.Count == places.Count,
            "places",
            $"{places.Count} places were measured before the test; measure each of them again.",
            nameof(reading.Dimension)
        );
        if (!checks.AllHold)
        {
            return;
        }

        foreach (var (i, place) in places.Index())
        {
            CheckAfter(
                checks,
                place,
                after[i],
                i == 0 ? nameof(reading.Dimension) : nameof(reading.FurtherDimensions)
            );
        }
    }

    public static IReadOnlyList<PlaceResult> Judge(
        StageReading reading,
        PressureSetUp setUp,
        PressurePlan plan
    )
    {
        var allowed = WrittenLimit.Exact(plan.AllowedPermanentSet.Millimetres, "mm");
        return
        [
            .. setUp
                .Places()
                .Zip(reading.Dimensions(), (place, after) => Judge(place, after, setUp, allowed)),
        ];
    }

    private static void CheckPlace(
        Checks checks,
        PressureSetUp setUp,
        MeasuredPlace place,
        int index
    )
    {
        checks
            .Text(
                place.Name,
                80,
                "Name what is measured before and after",
                Field(nameof(setUp.DimensionName))
            )
            .That(
                place.Before.Unit == setUp.DimensionBefore.Unit,
                "unit",
                $"{place.Name} is given in {place.Before.Unit}, the first place in {setUp.DimensionBefore.Unit}; one test has one unit.",
                Field(nameof(setUp.DimensionBefore))
            );
        Reading.Between(
            checks,
            place.Before,
            setUp.IsStrain ? -LargestStrain : 1,
            setUp.IsStrain ? LargestStrain : LargestLength,
            setUp.IsStrain ? "Strain before" : "Dimension before",
            Field(nameof(setUp.DimensionBefore))
        );
        if (setUp.IsStrain)
        {
            Reading.Between(
                checks,
                place.StrainLength,
                1,
                LargestLength,
                "Length that the strain stands for",
                Field(nameof(setUp.StrainLength))
            );
        }

        string Field(string first) => index == 0 ? first : nameof(setUp.FurtherPlaces);
    }

    private static void CheckAfter(Checks checks, MeasuredPlace place, Measured after, string field)
    {
        checks.That(
            after.Unit == place.Before.Unit,
            "unit",
            $"{place.Name} was read in {place.Before.Unit} before the test; enter it in that unit again.",
            field
        );
        if (!checks.AllHold)
        {
            return;
        }

        if (place.StrainLength is not null)
        {
            Reading.Between(checks, after, -LargestStrain, LargestStrain, "Strain", field);
            return;
        }

        Reading.Between(checks, after, 1, LargestLength, "Dimension", field);
        if (checks.AllHold)
        {
            CheckRatio(checks, place, after, field);
        }
    }

    /// <summary>A dimension that changed by a fifth was read in another unit, or is another dimension.</summary>
    private static void CheckRatio(Checks checks, MeasuredPlace place, Measured after, string field)
    {
        var ratio = after.InUnit() / place.Before.InUnit();
        checks.That(
            ratio is < LargestRatio and > 1 / LargestRatio,
            "unit",
            $"{place.Name} was {place.Before} before the test and is {after} now; that looks like another unit or another dimension. Enter it in {place.Before.Unit}.",
            field
        );
    }

    private static PlaceResult Judge(
        MeasuredPlace place,
        Measured after,
        PressureSetUp setUp,
        WrittenLimit allowed
    )
    {
        var (judgement, working) = place.StrainLength is { } over
            ? ByStrain(place, after, setUp, over, allowed)
            : ByDimension(place, after, setUp, allowed);
        return new(
            place,
            after,
            judgement.Verdict,
            $"Permanent set of {place.Name}: {judgement.Sentence}",
            working
        );
    }

    private static (Judgement, Working) ByDimension(
        MeasuredPlace place,
        Measured after,
        PressureSetUp setUp,
        WrittenLimit allowed
    )
    {
        var set = PermanentSet
            .Evaluate(
                new SetMeasurement(
                    place.Name,
                    Length.FromMillimetres(place.Before.InUnit()),
                    Length.FromMillimetres(after.InUnit()),
                    Length.FromMillimetres(setUp.DimensionUncertainty.InUnit()),
                    allowed
                )
            )
            .Value;
        return (set.Judgement, set.Working);
    }

    private static (Judgement, Working) ByStrain(
        MeasuredPlace place,
        Measured after,
        PressureSetUp setUp,
        Measured over,
        WrittenLimit allowed
    )
    {
        var set = PermanentStrain
            .Evaluate(
                new StrainMeasurement(
                    place.Name,
                    place.Before.InUnit(),
                    after.InUnit(),
                    setUp.DimensionUncertainty.InUnit(),
                    Length.FromMillimetres(over.InUnit()),
                    allowed
                )
            )
            .Value;
        return (set.Judgement, set.Working);
    }
}
