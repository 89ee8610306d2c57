using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

public sealed class PhaseCorrectionTests
{
    private readonly SampleShop _shop = new();

    [Fact]
    public void CorrectPhases_ByTheEngineer_IsANewVersionAndOpensWhatIsNew()
    {
        var run = _shop.Ended();
        Accept.Value(_shop.TakeLog(run, SampleRunLogs.Of(run, SampleRunLogs.Excursion)));
        var judged = SampleRunLogs.Of(
            run,
            SampleRunLogs.Excursion,
            SampleRunLogs.Excursion with
            {
                StartSeconds = 40,
                EndSeconds = 42,
            }
        );

        var opened = Accept.Value(Correct(run, judged, "The dwell began later."));

        Assert.Single(opened);
        var correction = Assert.Single(run.PhaseCorrections!);
        Assert.Equal((2, "The dwell began later."), (correction.Version, correction.Reason));
        Assert.Equal(2, run.Log!.Excursions.Count);
    }

    [Fact]
    public void CorrectPhases_WithoutReasonOrOfAnotherLog_IsRefused()
    {
        var run = _shop.Ended();
        Accept.Value(_shop.TakeLog(run));

        var refused = Correct(run, run.Log! with { OriginalSha256 = new string('c', 64) }, " ");

        Assert.Equal(2, refused.Refusals.Count);
        Assert.Null(run.PhaseCorrections);
    }

    private Outcome<IReadOnlyList<Finding>> Correct(
        WeldRun run,
        LogSummary judged,
        string reason
    ) =>
        run.CorrectPhases(
            judged,
            reason,
            _shop.Procedure.Content.Windows,
            _shop.Vessel,
            _shop.Tool,
            SamplePeople.Engineer,
            _shop.Now
        );
}
