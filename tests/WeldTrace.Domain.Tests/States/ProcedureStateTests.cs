using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.States;

public sealed class ProcedureStateTests
{
    private const string Table = """
                    edit    trial   qualify    release   withdraw   revise
        Draft       Draft   Trial   !state     !state    Withdrawn  Draft
        Trial       !state  !state  Qualified  !state    Withdrawn  Draft
        Qualified   !state  !state  !state     Released  Withdrawn  Draft
        Released    !state  !state  !state     !state    Withdrawn  Draft
        Superseded  !state  !state  !state     !state    !state     Draft
        Withdrawn   !state  !state  !state     !state    !state     Draft
        """;

    private static readonly ToolDesign Tool = SampleTools.Design();

    public static TheoryData<ProcedureState, string, string> Cells =>
        StateTable.Read<ProcedureState>(Table);

    [Theory]
    [MemberData(nameof(Cells))]
    public void Act_InState_FollowsTheTable(ProcedureState state, string act, string expected)
    {
        var (revision, qualification) = In(state);
        var watch = new RecordWatch(revision);

        var next = Do(revision, act, qualification);

        if (act == "revise")
        {
            Assert.Equal(ProcedureState.Draft, next.Revision.State);
            Assert.Equal(state, revision.State);
            return;
        }

        watch.AssertOutcome(expected, next.Refusals, revision.State);
    }

    /// <summary>21 CFR 11.10(g) as a model; ISO 25239-5:2020 leaves the approval to someone else than the author.</summary>
    [Fact]
    public void Release_ByItsAuthor_NeedsASecondPerson()
    {
        var (revision, _) = In(ProcedureState.Qualified);
        var watch = new RecordWatch(revision);

        watch.AssertRefused(
            "F17",
            revision.Release(null, SamplePeople.Engineer, SampleTime.Start).Refusals
        );
    }

    [Fact]
    public void Release_OfALaterRevision_SupersedesTheEarlier()
    {
        var (earlier, qualification) = In(ProcedureState.Released);
        var later = Accept.Value(
            earlier.Revise(2, "Wider window.", SamplePeople.Engineer, SampleTime.Start)
        );
        Accept.All(later.PutOnTrial(SamplePeople.Engineer, SampleTime.Start));

        SampleProcedures.Release(later, qualification, earlier);

        Assert.Equal(ProcedureState.Superseded, earlier.State);
        Assert.Equal(later.Id, earlier.SupersededById);
        Assert.Contains("procedure superseded", earlier.PendingActs.Select(a => a.Act));
    }

    [Fact]
    public void Release_OfAnEarlierRevisionAfterALater_IsRefused()
    {
        var (first, qualification) = In(ProcedureState.Qualified);
        var later = Accept.Value(
            first.Revise(2, "Wider window.", SamplePeople.Engineer, SampleTime.Start)
        );
        Accept.All(later.PutOnTrial(SamplePeople.Engineer, SampleTime.Start));
        SampleProcedures.Release(later, qualification);
        var watch = new RecordWatch(first, later);

        var outcome = first.Release(later, SamplePeople.SecondEngineer, SampleTime.Start);

        watch.AssertRefused("supersession", outcome.Refusals);
    }

    [Fact]
    public void Release_NamingAnotherProcedure_IsAMistakeOfTheCaller()
    {
        var (revision, _) = In(ProcedureState.Qualified);
        var other = SampleProcedures.Released(Tool, "WP-99");

        Assert.Throws<ArgumentException>(() =>
            revision.Release(other, SamplePeople.SecondEngineer, SampleTime.Start)
        );
    }

    [Fact]
    public void Withdraw_WithoutAReason_IsRefused()
    {
        var (revision, _) = In(ProcedureState.Released);
        var watch = new RecordWatch(revision);

        watch.AssertRefused(
            "missing",
            revision.Withdraw(" ", SamplePeople.Engineer, SampleTime.Start).Refusals
        );
    }

    [Theory]
    [InlineData("edit", "role")]
    [InlineData("trial", "role")]
    [InlineData("withdraw", "role")]
    public void Act_ByAnOperator_IsRefused(string act, string code)
    {
        var (revision, qualification) = In(ProcedureState.Draft);
        var watch = new RecordWatch(revision);

        watch.AssertRefused(code, Do(revision, act, qualification, SamplePeople.Operator).Refusals);
    }

    private static (ProcedureRevision Revision, IReadOnlyList<Refusal> Refusals) Do(
        ProcedureRevision revision,
        string act,
        QualificationRecord record,
        Actor? actor = null
    )
    {
        var at = SampleTime.Start.AddDays(1);
        if (act == "revise")
        {
            var next = revision.Revise(2, "Wider window.", actor ?? SamplePeople.Engineer, at);
            return (next.Value!, next.Refusals);
        }

        var outcome = act switch
        {
            "edit" => revision.Edit(
                "Lap joint",
                revision.Content,
                actor ?? SamplePeople.Engineer,
                at
            ),
            "trial" => revision.PutOnTrial(actor ?? SamplePeople.Engineer, at),
            "qualify" => revision.Qualify(record, actor ?? SamplePeople.Engineer, at),
            "release" => revision.Release(null, actor ?? SamplePeople.SecondEngineer, at),
            "withdraw" => revision.Withdraw(
                "Replaced by WP-08.",
                actor ?? SamplePeople.Engineer,
                at
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(act), act, "Unknown act."),
        };
        return (revision, outcome.Refusals);
    }

    private static (ProcedureRevision Revision, QualificationRecord Qualification) In(
        ProcedureState state
    )
    {
        var revision =
            state == ProcedureState.Draft
                ? SampleProcedures.Draft(Tool)
                : SampleProcedures.OnTrial(Tool);
        var onTrial = state == ProcedureState.Draft ? SampleProcedures.OnTrial(Tool) : revision;
        var request = SampleQualifications.Request with
        {
            PieceLength = WeldTrace.Engineering.Quantities.Length.FromMillimetres(200),
        };
        var qualification = SampleQualifications.Signed(onTrial, Tool, null, request).Record;
        var at = SampleTime.Start;
        if (state is not (ProcedureState.Draft or ProcedureState.Trial or ProcedureState.Withdrawn))
        {
            Accept.All(revision.Qualify(qualification, SamplePeople.Engineer, at));
        }

        if (state is ProcedureState.Released or ProcedureState.Superseded)
        {
            Accept.All(revision.Release(null, SamplePeople.SecondEngineer, at));
        }

        if (state == ProcedureState.Superseded)
        {
            var later = Accept.Value(
                revision.Revise(2, "Wider window.", SamplePeople.Engineer, at)
            );
            Accept.All(later.PutOnTrial(SamplePeople.Engineer, at));
            SampleProcedures.Release(later, qualification, revision);
        }

        if (state == ProcedureState.Withdrawn)
        {
            Accept.All(revision.Withdraw("Replaced by WP-08.", SamplePeople.Engineer, at));
        }

        Assert.Equal(state, revision.State);
        return (revision, qualification);
    }
}
