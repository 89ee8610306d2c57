using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>A signal of a control chart asks to look for a cause (NIST/SEMATECH e-Handbook 6.3.1); it judges nothing.</summary>
public sealed class SignalReviewTests
{
    private readonly SampleShop _shop = new();

    [Fact]
    public void Record_ByTheEngineer_SaysWhatWasSeenAndByWhom()
    {
        var run = _shop.Ended();

        var review = Accept.Value(Review(run, Seen(RunSignal.JumpFromRunBefore)));

        Assert.Equal(
            (run.Id, run.VesselId),
            (review.RunId, Assert.Single(review.ConcernedVessels))
        );
        Assert.Equal("The clamp had slipped.", review.Text);
        Assert.Equal(SamplePeople.Engineer.PrintedName, review.ReviewerName);
        Assert.Contains(
            "fault of measuring",
            Assert.Single(review.PendingActs).Act,
            StringComparison.Ordinal
        );
        Assert.Equal(WeldRunState.Ended, run.State);
    }

    [Fact]
    public void Record_WithoutSignalOrWords_IsRefused()
    {
        var refused = Review(_shop.Ended(), Seen(), " ");

        Assert.Equal(["signal", "missing"], refused.Refusals.Select(r => r.Code));
    }

    [Theory]
    [InlineData("operator", false)]
    [InlineData("inspector", false)]
    [InlineData("quality", true)]
    public void Record_ByOthers_OnlyOfThoseWhoAnswerForTheProcedure(string who, bool allowed)
    {
        var actor = who switch
        {
            "operator" => SamplePeople.Operator,
            "inspector" => SamplePeople.Inspector,
            _ => SamplePeople.QualityManager,
        };

        Assert.Equal(
            allowed,
            Review(_shop.Ended(), Seen(RunSignal.JumpFromRunBefore), actor: actor).IsAccepted
        );
    }

    [Fact]
    public void Record_WithAFindingOfAnotherVessel_IsRefused()
    {
        var other = new SampleShop();
        var run = other.Ended();
        var finding = Accept.Value(
            other.TakeLog(run, SampleRunLogs.Of(run, SampleRunLogs.Excursion))
        )[0];

        var refused = Review(_shop.Ended(), Seen(RunSignal.JumpFromRunBefore), finding: finding);

        Assert.Equal("finding", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Cover_ASignalOfAnotherKindThanWasReviewed_AsksAgain()
    {
        var review = Accept.Value(Review(_shop.Ended(), Seen(RunSignal.JumpFromRunBefore)));

        Assert.True(SignalReview.Cover([review], [RunSignal.JumpFromRunBefore]));
        Assert.True(SignalReview.Cover([], []));
        Assert.False(
            SignalReview.Cover([review], [RunSignal.JumpFromRunBefore, RunSignal.ValueBeyondLimits])
        );
    }

    private Outcome<SignalReview> Review(
        WeldRun run,
        SeenSignal seen,
        string text = " The clamp had slipped. ",
        Actor? actor = null,
        Finding? finding = null
    ) =>
        SignalReview.Record(
            Guid.CreateVersion7(_shop.Now),
            run,
            seen,
            SignalConclusion.MeasuringFault,
            text,
            finding,
            actor ?? SamplePeople.Engineer,
            _shop.Now
        );

    private static SeenSignal Seen(params IReadOnlyList<RunSignal> signals) =>
        new(WeldParameter.AxialForce, 9.4m, "kN", signals, 21, "WPS-1 rev A");
}
