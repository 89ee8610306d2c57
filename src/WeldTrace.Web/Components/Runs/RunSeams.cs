using System.Globalization;
using WeldTrace.Documents.Drawings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence.Loading;
using DesignPass = WeldTrace.Domain.VesselDesigns.PassPlan;

namespace WeldTrace.Web.Components.Runs;

/// <summary>The seam of a run as it is drawn, on screen and on paper.</summary>
public static class RunSeams
{
    private const int Letters = 26;

    /// <summary>The seam with its excursions.</summary>
    /// <param name="run">Run.</param>
    /// <param name="pass">The pass of the drawing.</param>
    /// <param name="cut">Where a section was cut, along the travel from the start; null when none was.</param>
    /// <param name="indications">Places that other records speak of; null for none.</param>
    public static SeamPlan Plan(
        WeldRun run,
        DesignPass pass,
        Angle? cut,
        IReadOnlyList<SeamIndication>? indications = null
    )
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(pass);
        return new SeamPlan
        {
            TrackRadius = run.TrackRadius,
            Travel = run.Travel,
            Start = pass.Start,
            Overlap = pass.Overlap,
            Repair = RepairOf(run),
            Travelled = run.Travelled,
            Cut = cut,
            Excursions = [.. (run.Log?.Excursions ?? []).Select((e, i) => Place(run, e, i))],
            Points =
            [
                .. (indications ?? []).Select(
                    (found, i) =>
                        new SeamPoint(Letter(i), Shape(found.Kind), found.What, found.Along)
                ),
            ],
        };
    }

    /// <summary>The letter under which a place stands, by its number in the list from 0: a to z, then a1 and so on.</summary>
    public static string Letter(int index) =>
        (char)('a' + (index % Letters))
        + (index < Letters ? "" : (index / Letters).ToString(CultureInfo.InvariantCulture));

    private static SeamPointShape Shape(SeamIndicationKind kind) =>
        kind switch
        {
            SeamIndicationKind.Section => SeamPointShape.Bar,
            SeamIndicationKind.Flaw => SeamPointShape.Diamond,
            SeamIndicationKind.Bubble => SeamPointShape.Ring,
            _ => SeamPointShape.Triangle,
        };

    /// <summary>The stretch that a run repairs; null for the pass itself.</summary>
    public static SeamStretch? RepairOf(WeldRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.Repair is { } repair
            ? new SeamStretch(run.TrackRadius * repair.Start.Radians, run.PlannedPath)
            : null;
    }

    /// <summary>Which side of the weld lies outside and which inside the circle.</summary>
    public static string Sides(RunRecords records)
    {
        ArgumentNullException.ThrowIfNull(records);
        var (spindle, travel) = (records.Revision.Content.SpindleSense, records.Run.Travel);
        var isOuter = AdvancingSide.OnCircle(spindle, travel) == CircleEdge.Outer;
        return isOuter
            ? "Seen from the shoulder side. Outside of the circle: advancing side; inside: retreating side."
            : "Seen from the shoulder side. Outside of the circle: retreating side; inside: advancing side.";
    }

    private static SeamExcursion Place(WeldRun run, LoggedExcursion found, int index) =>
        new(
            (index + 1).ToString(CultureInfo.InvariantCulture),
            ParameterNames.Of(found.Parameter),
            run.TrackRadius * found.StartAngle.Radians,
            run.TrackRadius * found.EndAngle.Radians
        );
}
