using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Tests.LogJudging;

/// <summary>The margin of a run counts with the deepest of all its phases.</summary>
public sealed class LigamentOfRunTests
{
    private static readonly ProcedureContent Procedure = new(
        "6061",
        "T6",
        Length.FromMillimetres(3),
        "lap", // of two sheets of the same thickness: 6 mm under the tool
        Guid.Empty,
        "",
        RotationSense.Clockwise,
        [],
        0.5m,
        ""
    );

    [Fact]
    public void Margin_DepthsOfTwoPhases_TakesTheDeepest()
    {
        var log = Log([Phase(LoggedPhase.Dwell, 0.0052), Phase(LoggedPhase.Traverse, 0.0055)]);

        var margin = LigamentOfRun.Margin(log, Procedure)!;

        Assert.Equal(0.5, margin.Value.Ligament.Millimetres, 1e-9);
    }

    [Fact]
    public void Margin_NoDepthLogged_IsNone() =>
        Assert.Null(LigamentOfRun.Margin(Log([Phase(LoggedPhase.Dwell, null)]), Procedure));

    private static LoggedPhaseFigures Phase(string phase, double? metres) =>
        new(phase, 2, 0, null, null, [], metres);

    private static LogSummary Log(IReadOnlyList<LoggedPhaseFigures> phases) =>
        new(
            "run.csv",
            new string('a', 64),
            1,
            new string('b', 64),
            1,
            1,
            Length.Zero,
            true,
            [],
            [],
            [],
            [],
            PhaseFigures: phases
        );
}
