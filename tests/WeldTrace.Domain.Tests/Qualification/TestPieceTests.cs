using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Qualification;

public sealed class TestPieceTests
{
    private readonly ToolDesign _design = SampleTools.Design();
    private readonly ProcedureRevision _revision;
    private readonly QualificationRecord _record;

    public TestPieceTests()
    {
        _revision = SampleProcedures.OnTrial(_design);
        _record = SampleQualifications.Open(_revision);
    }

    private PlannedPiece First => _record.Plan.Pieces[0];

    [Fact]
    public void Begin_AllInOrder_KeepsTheRulesAndTheLots()
    {
        var piece = Accept.Value(SampleQualifications.Begin(Facts()));

        Assert.All(piece.Gate, v => Assert.Equal(RuleStanding.Holds, v.Standing));
        Assert.Equal(["F1", "F2", "F3", "F5", "F6", "F7"], piece.Gate.Select(v => v.RuleId));
        Assert.Equal("6061-T6", Assert.Single(piece.Lots).Material);
    }

    [Fact]
    public void Begin_NothingChosen_NamesEveryRuleThatForbids()
    {
        var refused = SampleQualifications.Begin(
            Facts() with
            {
                Machine = null,
                Tool = null,
                Lots = [],
            }
        );

        Assert.Equal(["F3", "F5", "F6", "F7"], refused.Refusals.Select(r => r.Code));
    }

    [Fact]
    public void Begin_ReleasedProcedure_IsRefused()
    {
        var sample = SampleQualifications.Signed(_revision, _design);
        SampleProcedures.Release(_revision, sample.Record);

        var refused = SampleQualifications.Begin(Facts());

        Assert.Contains(refused.Refusals, r => r.Code == "F2");
    }

    [Fact]
    public void Begin_ToolOfAnotherDesign_IsRefused()
    {
        var other = SampleTools.InService(SampleTools.Design("TD-99"));

        var refused = SampleQualifications.Begin(Facts() with { Tool = other });

        Assert.Equal("F6", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Begin_WhileAnotherIsWelded_IsRefused()
    {
        var running = Accept.Value(SampleQualifications.Begin(Facts()));

        var refused = SampleQualifications.Begin(Facts() with { Pieces = [running] });

        Assert.Equal("F1", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Begin_PieceThatIsWeldedAlready_IsRefused()
    {
        var welded = SampleQualifications.Welded(_record, First, _revision, _design);

        var refused = SampleQualifications.Begin(Facts() with { Pieces = [welded] });

        Assert.Equal("F1", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Finish_WithLog_ChargesTheToolAndSeals()
    {
        var facts = Facts();
        var piece = Accept.Value(SampleQualifications.Begin(facts));

        Accept.All(
            piece.Finish(
                SampleQualifications.Log(_record, First),
                null,
                facts.Tool!,
                SamplePeople.Operator,
                SampleTime.Start
            )
        );

        Assert.Equal(500, facts.Tool!.Used.Millimetres, 1e-9);
        Assert.True(piece.IsSealed);
        Assert.Empty(TestPieceRules.Faults(piece, First));
    }

    [Fact]
    public void Finish_BySomebodyElse_IsRefused()
    {
        var facts = Facts();
        var piece = Accept.Value(SampleQualifications.Begin(facts));

        var refused = piece.Finish(
            SampleQualifications.Log(_record, First),
            null,
            facts.Tool!,
            SamplePeople.SecondOperator,
            SampleTime.Start
        );

        Assert.Equal("operator", Assert.Single(refused.Refusals).Code);
    }

    [Theory]
    [InlineData(0.019, true, 0)]
    [InlineData(-0.019, true, 0)]
    [InlineData(0.021, true, 2)]
    [InlineData(0, false, 1)]
    public void Faults_MeanBeyondTwoPerCentOrUnfinished_DoNotStandForTheirHeatInput(
        double off,
        bool reachedEnd,
        int faults
    )
    {
        var piece = Finished(SampleQualifications.Log(_record, First, off, reachedEnd));

        Assert.Equal(faults, TestPieceRules.Faults(piece, First).Count);
    }

    [Fact]
    public void Faults_Excursion_IsToldWithItsLength()
    {
        var log = SampleQualifications.Log(_record, First) with
        {
            Excursions =
            [
                new LoggedExcursion(
                    WeldParameter.AxialForce,
                    true,
                    10,
                    12,
                    Angle.Zero,
                    Angle.Zero,
                    Length.FromMillimetres(6.7),
                    9900
                ),
            ],
        };

        var fault = Assert.Single(TestPieceRules.Faults(Finished(log), First));

        Assert.Contains(
            "Axial force was above its window over 6.7 mm",
            fault,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Discard_Spoilt_ChargesWhatWasTravelledAndLeavesThePieceToBeWeldedAgain()
    {
        var facts = Facts();
        var piece = Accept.Value(SampleQualifications.Begin(facts));

        Accept.All(
            piece.Discard(
                Length.FromMillimetres(120),
                "Pin broke.",
                facts.Tool!,
                SamplePeople.Operator,
                SampleTime.Start
            )
        );

        Assert.Equal(120, facts.Tool!.Used.Millimetres, 1e-9);
        Assert.True(SampleQualifications.Begin(Facts() with { Pieces = [piece] }).IsAccepted);
    }

    private TestPiece Finished(LogSummary log)
    {
        var facts = Facts();
        var piece = Accept.Value(SampleQualifications.Begin(facts));
        Accept.All(piece.Finish(log, null, facts.Tool!, SamplePeople.Operator, SampleTime.Start));
        return piece;
    }

    private TestPieceFacts Facts() =>
        SampleQualifications.Facts(_record, First, _revision, _design);
}
