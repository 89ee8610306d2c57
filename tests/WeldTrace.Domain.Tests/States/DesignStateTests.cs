using WeldTrace.Domain.VesselDesigns;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.States;

public sealed class DesignStateTests
{
    private const string Table = """
                    edit    release
        Draft       Draft   Released
        Released    !state  !state
        Superseded  !state  !state
        """;

    public static TheoryData<DesignState, string, string> Cells =>
        StateTable.Read<DesignState>(Table);

    [Theory]
    [MemberData(nameof(Cells))]
    public void Act_InState_FollowsTheTable(DesignState state, string act, string expected)
    {
        var design = In(state);
        var watch = new RecordWatch(design);

        var outcome =
            act == "edit"
                ? design.Edit(
                    "Reservoir",
                    SampleDesigns.Content(),
                    SamplePeople.Engineer,
                    SampleTime.Start
                )
                : design.Release(null, SamplePeople.SecondEngineer, SampleTime.Start);

        watch.AssertOutcome(expected, outcome.Refusals, design.State);
    }

    [Fact]
    public void Release_ByItsAuthor_NeedsASecondPerson()
    {
        var design = In(DesignState.Draft);
        var watch = new RecordWatch(design);

        watch.AssertRefused(
            "F17",
            design.Release(null, SamplePeople.Engineer, SampleTime.Start).Refusals
        );
    }

    [Fact]
    public void Release_OfAnEarlierRevisionAfterALater_IsRefused()
    {
        var first = In(DesignState.Draft);
        var later = Next(first);
        Accept.All(later.Release(null, SamplePeople.SecondEngineer, SampleTime.Start));
        var watch = new RecordWatch(first, later);

        var outcome = first.Release(later, SamplePeople.SecondEngineer, SampleTime.Start);

        watch.AssertRefused("supersession", outcome.Refusals);
    }

    [Fact]
    public void Plan_FromADraft_IsRefused()
    {
        var outcome = Domain.Vessels.Vessel.Plan(
            "NR4-0009",
            In(DesignState.Draft),
            "L26-03",
            [new("shell", "S-9", Guid.CreateVersion7(SampleTime.Start), "ML-118", "C-1")],
            SamplePeople.Engineer,
            SampleTime.Start
        );

        var refusal = Assert.Single(outcome.Refusals);
        Assert.Equal("design", refusal.Code);
        Assert.Contains("NR-4 rev A is draft", refusal.Sentence, StringComparison.Ordinal);
    }

    /// <summary>Every weld of the drawing is one step of the route, named with its joint and pass.</summary>
    [Fact]
    public void Draw_PassWithoutAStep_IsTold()
    {
        var content = SampleDesigns.Content();
        var outcome = VesselDesign.Draw(
            "NR-5",
            "Reservoir",
            content with
            {
                Route = [.. content.Route.Skip(1)],
            },
            SamplePeople.Engineer,
            SampleTime.Start
        );

        Assert.Contains(
            "Pass 1 of joint J1 is welded by 0 steps of the route; one is right.",
            outcome.Refusals.Select(r => r.Sentence)
        );
    }

    private static VesselDesign Next(VesselDesign design) =>
        Accept.Value(design.Revise(2, "Thicker wall.", SamplePeople.Engineer, SampleTime.Start));

    private static VesselDesign In(DesignState state)
    {
        if (state == DesignState.Draft)
        {
            return Accept.Value(
                VesselDesign.Draw(
                    "NR-4",
                    "Reservoir",
                    SampleDesigns.Content(),
                    SamplePeople.Engineer,
                    SampleTime.Start
                )
            );
        }

        var design = SampleDesigns.Released();
        if (state == DesignState.Superseded)
        {
            Accept.All(Next(design).Release(design, SamplePeople.SecondEngineer, SampleTime.Start));
        }

        return design;
    }
}
