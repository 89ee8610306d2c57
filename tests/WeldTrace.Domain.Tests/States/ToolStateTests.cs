using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.States;

public sealed class ToolStateTests
{
    private const string Table = """
                   serve      hold    retire   inspect    reject     takeOver  charge
        InStore    InService  !state  Retired  InStore    InStore    InStore   InStore
        InService  !state     Held    Retired  InService  Held       !state    InService
        Held       InService  !state  Retired  Held       Held       !state    Held
        Retired    !state     !state  !state   !state     !state     !state    Retired
        """;

    private static readonly ToolDesign Design = SampleTools.Design();

    public static TheoryData<ToolState, string, string> Cells => StateTable.Read<ToolState>(Table);

    [Theory]
    [MemberData(nameof(Cells))]
    public void Act_InState_FollowsTheTable(ToolState state, string act, string expected)
    {
        var tool = In(state);
        var watch = new RecordWatch(tool);

        var outcome = Do(tool, act);

        watch.AssertOutcome(expected, outcome.Refusals, tool.State);
    }

    /// <summary>F10: the whole life welded holds the tool, whatever else it could do.</summary>
    [Fact]
    public void Charge_TheWholeLife_HoldsTheTool()
    {
        var tool = In(ToolState.InService);

        tool.Charge(Use(40), SamplePeople.Operator);

        Assert.Equal(ToolState.Held, tool.State);
        Assert.Equal(Length.Zero, tool.Remaining);
        var watch = new RecordWatch(tool);
        watch.AssertRefused(
            "F6",
            tool.PutInService(SamplePeople.Engineer, SampleTime.Start).Refusals
        );
    }

    private static Outcome Do(Tool tool, string act)
    {
        var at = SampleTime.Start.AddDays(1);
        return act switch
        {
            "serve" => tool.PutInService(SamplePeople.Engineer, at),
            "hold" => tool.Hold("Dropped on the floor.", SamplePeople.Operator, at),
            "retire" => tool.Retire(
                RetirementReason.Wear,
                "Pin rounded.",
                SamplePeople.Operator,
                at
            ),
            "inspect" => Inspect(tool, true),
            "reject" => Inspect(tool, false),
            "takeOver" => tool.TakeOver(Length.FromMetres(3), "Card 12", SamplePeople.Engineer, at),
            "charge" => Charged(tool),
            _ => throw new ArgumentOutOfRangeException(nameof(act), act, "Unknown act."),
        };
    }

    private static Outcome Charged(Tool tool)
    {
        tool.Charge(Use(0.4), SamplePeople.Operator);
        return Outcome.Accepted;
    }

    private static ToolUse Use(double metres) =>
        new(
            Guid.CreateVersion7(SampleTime.Start),
            "NR4-0001",
            Length.FromMetres(metres),
            ChargeBasis.ProcessLog,
            SampleTime.Start,
            "J1"
        );

    private static Outcome Inspect(Tool tool, bool isGood) =>
        tool.Inspect(
            new InspectionEntry(
                ToolInspectionKind.Cleaned,
                isGood,
                isGood ? "" : "Crack at the root.",
                null,
                null
            ),
            Design,
            SampleTime.Day,
            SamplePeople.Operator,
            SampleTime.Start
        );

    private static Tool In(ToolState state)
    {
        var tool = SampleTools.InService(Design);
        var at = SampleTime.Start;
        if (state == ToolState.InStore)
        {
            tool = Accept.Value(Tool.Enter("T-15-02", Design, SamplePeople.Engineer, at));
            Accept.All(
                tool.Inspect(
                    new InspectionEntry(ToolInspectionKind.FirstUse, true, "", null, null),
                    Design,
                    SampleTime.Day,
                    SamplePeople.Operator,
                    at
                )
            );
        }

        if (state == ToolState.Held)
        {
            Accept.All(tool.Hold("Dropped.", SamplePeople.Operator, at));
        }

        if (state == ToolState.Retired)
        {
            Accept.All(
                tool.Retire(RetirementReason.Limit, "Life used.", SamplePeople.Operator, at)
            );
        }

        Assert.Equal(state, tool.State);
        return tool;
    }
}
