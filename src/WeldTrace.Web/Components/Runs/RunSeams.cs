using System.Globalization;
using WeldTrace.Documents.Drawings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Drawings;
using DesignPass = WeldTrace.Domain.VesselDesigns.PassPlan;

namespace WeldTrace.Web.Components.Runs;

/// <summary>The seam of a run as it is drawn, on screen and on paper.</summary>
public static class RunSeams
{
    /// <summary>The seam with its excursions.</summary>
    /// <param name="run">Run.</param>
    /// <param name="pass">The pass of the drawing.</param>
    /// <param name="cut">Where a section was cut, along the travel from the start; null when none was.</param>
    public static SeamPlan Plan(WeldRun run, DesignPass pass, Angle? cut)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(pass);
        return new SeamPlan
        {
            TrackRadius = run.TrackRadius,
            Travel = run.Travel,
            Start = PassPlans.Clockwise(pass.Start),
            Overlap = pass.Overlap,
            Repair = RepairOf(run),
            Travelled = run.Travelled,
            Cut = cut,
            Excursions = [.. (run.Log?.Excursions ?? []).Select((e, i) => Place(run, e, i))],
        };
    }

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
