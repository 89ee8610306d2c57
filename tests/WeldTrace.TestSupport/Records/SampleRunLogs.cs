using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.TestSupport.Records;

/// <summary>What the judged process log of a run showed.</summary>
public static class SampleRunLogs
{
    /// <summary>The whole path, every parameter within its window.</summary>
    public static LogSummary Of(WeldRun run, params IReadOnlyList<LoggedExcursion> excursions)
    {
        ArgumentNullException.ThrowIfNull(run);
        return Travelled(
            run.State == WeldRunState.Interrupted ? run.Travelled!.Value : run.PlannedPath,
            run
        ) with
        {
            Excursions = excursions,
        };
    }

    /// <summary>A part of the path, or all of it.</summary>
    public static LogSummary Travelled(Length path, WeldRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return new(
            "run.csv",
            new string('a', 64),
            48_000,
            new string('b', 64),
            1200,
            120,
            path,
            path >= run.PlannedPath,
            [new("traverse", 5, 115)],
            [new(WeldParameter.AxialForce, 1100, 7900, 8000, 8100, 40)],
            [],
            []
        );
    }

    /// <summary>Axial force 9 kN against 8.8 kN, from 10° to 14°.</summary>
    public static LoggedExcursion Excursion { get; } =
        new(
            WeldParameter.AxialForce,
            true,
            10,
            14,
            Angle.FromDegrees(10),
            Angle.FromDegrees(14),
            Length.FromMillimetres(4.3),
            9000
        );
}
