using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Tooling;

public sealed class ToolFittingTests
{
    private static readonly ToolDesign Separate = SampleTools.Design(hasSeparateParts: true);
    private static readonly ToolDesign OnePiece = SampleTools.Design("TD-16");

    [Fact]
    public void FitPart_NewPin_BeginsItsOwnLifeAndNeedsItsOwnCheck()
    {
        var tool = SampleTools.InService(Separate);
        Use(tool, 30);

        Accept.All(Fit(tool, ToolPartKind.Pin, "P2"));

        Assert.Equal(0, tool.Used.Metres);
        Assert.Equal(30, tool.ShoulderUsed!.Value.Metres, 9);
        Assert.Equal(ToolState.InStore, tool.State);
        Assert.False(tool.HasFirstUseCheck);
        Assert.Equal(
            [(30.0, RetirementReason.Wear), (0.0, (RetirementReason?)null)],
            tool.Lives.Select(l => (l.Used.Metres, l.Ended))
        );
    }

    [Fact]
    public void Charge_LogOfARunBeforeTheChange_StaysWithTheOldPin()
    {
        var tool = SampleTools.InService(Separate);
        var run = Guid.CreateVersion7(SampleTime.Start);
        Charge(tool, run, 0.42, ChargeBasis.PlannedPath);
        Accept.All(Fit(tool, ToolPartKind.Pin, "P2"));

        Charge(tool, run, 0.40, ChargeBasis.ProcessLog);

        Assert.Equal([0.40, 0.0], tool.Lives.Select(l => l.Used.Metres));
    }

    /// <summary>Pin 40 m, shoulder 120 m: three pins of 39 m leave 3 m of the shoulder.</summary>
    [Fact]
    public void Remaining_ShoulderNearerItsLimit_IsTheShoulders()
    {
        var tool = SampleTools.InService(Separate);
        foreach (var pin in new[] { "P2", "P3", "P4" })
        {
            Use(tool, 39);
            Accept.All(Fit(tool, ToolPartKind.Pin, pin));
        }

        Assert.Equal(3, tool.Remaining.Metres, 9);
    }

    [Fact]
    public void FitPart_OnePieceUsedMarkOrNoWords_Refused()
    {
        var tool = SampleTools.InService(Separate);
        var whole = SampleTools.InService(OnePiece);

        Assert.Contains(Fit(whole, ToolPartKind.Pin, "P2").Refusals, r => r.Code == "parts");
        Assert.Contains(
            Fit(tool, ToolPartKind.Pin, tool.Pin!.Mark).Refusals,
            r => r.Code == "mark"
        );
        Assert.Equal("missing", Assert.Single(Fit(tool, ToolPartKind.Pin, " ").Refusals).Code);
    }

    [Fact]
    public void Enter_PartsAsTheDesignSays_OrRefused()
    {
        var (engineer, at) = (SamplePeople.Engineer, SampleTime.Start);

        var missing = Tool.Enter("T-1", Separate, engineer, at);
        var needless = Tool.Enter("T-1", OnePiece, engineer, at, new ToolPartMarks("P1", "S1"));
        var alike = Tool.Enter("T-1", Separate, engineer, at, new ToolPartMarks("P1", " p1"));

        Assert.Equal("parts", Assert.Single(missing.Refusals).Code);
        Assert.Equal("parts", Assert.Single(needless.Refusals).Code);
        Assert.Equal("mark", Assert.Single(alike.Refusals).Code);
    }

    [Fact]
    public void Retire_KeepsWhatWasSeen()
    {
        var tool = SampleTools.InService(OnePiece);

        Accept.All(
            tool.Retire(
                RetirementReason.Breakage,
                " Pin sheared off at the root. ",
                SamplePeople.Operator,
                SampleTime.Start
            )
        );

        Assert.Equal(
            new ToolEnd(
                "Pin sheared off at the root.",
                SamplePeople.Operator.PrintedName,
                SampleTime.Start
            ),
            tool.End
        );
    }

    private static Outcome Fit(Tool tool, ToolPartKind kind, string mark) =>
        tool.FitPart(
            kind,
            mark,
            RetirementReason.Wear,
            "Threads gone.",
            SamplePeople.Operator,
            SampleTime.Start
        );

    private static void Use(Tool tool, double metres) =>
        Charge(tool, Guid.CreateVersion7(SampleTime.Start), metres, ChargeBasis.ProcessLog);

    private static void Charge(Tool tool, Guid run, double metres, ChargeBasis basis) =>
        tool.Charge(
            new ToolUse(run, "NR4-0001", Length.FromMetres(metres), basis, SampleTime.Start, "J1"),
            SamplePeople.Operator
        );
}
