using System.Globalization;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

/// <summary>Maps what was done to components and joints before welding.</summary>
internal static class PreparationMapping
{
    public static IEnumerable<PreparationLine> Map(TravelerSource source)
    {
        var material = source.History.Material;
        return material
            .HeatTreatments.Select(Treatment)
            .Concat(material.Preparation.Cleanings.Select(c => Cleaning(c, source.Site)))
            .Concat(material.Preparation.FitUps.Select(f => FitUp(f, source.Site)))
            .OrderBy(line => line.When, StringComparer.Ordinal);
    }

    /// <summary>Minima that lots were judged by and that nobody has checked against the site's own copy.</summary>
    public static IEnumerable<string> Unchecked(VesselMaterial material) =>
        material
            .Lots.Select(l => l.Results?.Minima)
            .OfType<Domain.Limits.LimitReference>()
            .Where(m => !m.WasChecked)
            .Select(m => $"{m.Label}: {m.Source}")
            .Distinct();

    private static PreparationLine Treatment(HeatTreatment treatment) =>
        new(
            treatment.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            "heat treatment",
            string.Join(", ", treatment.Parts.Select(p => p.Serial)),
            $"{treatment.Number}, {treatment.Furnace}: {treatment.Kept.Lowest} to {treatment.Kept.Highest} for {treatment.Kept.Minutes}, asked for {treatment.Asked.Lower} to {treatment.Asked.Upper} for {treatment.Asked.ShortestMinutes} to {treatment.Asked.LongestMinutes} by {treatment.Asked.Instruction}. {treatment.Verdict}",
            treatment.EnteredByName
        );

    private static PreparationLine Cleaning(JointCleaning cleaning, Site site) =>
        new(
            site.Show(cleaning.CleanedAt),
            "cleaning",
            cleaning.JointCode,
            cleaning.Method,
            cleaning.CleanedByName
        );

    private static PreparationLine FitUp(JointFitUp fitUp, Site site) =>
        new(
            site.Show(fitUp.MeasuredAt),
            "fit-up",
            fitUp.JointCode,
            $"Gap {fitUp.Gap}, mismatch {fitUp.Mismatch}, measured with {fitUp.InstrumentMark}. {fitUp.Remark}".TrimEnd(),
            fitUp.MeasuredByName
        );
}
