using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tests.States;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>A rule waived for one run of one step by an engineer and a quality manager, two persons.</summary>
public sealed class ConcessionTests
{
    private const string Why = "Ultrasonic scan of the tube shows no lamination.";

    /// <summary>An engineer who is quality manager too.</summary>
    private static readonly Actor Both = SamplePeople
        .Entered("Hana Kurt", Role.Engineer, Role.QualityManager)
        .AsActor();

    /// <summary>Everything that forbids a run, with whether it can be waived: never the route, and never nothing to weld with.</summary>
    public static TheoryData<string, string, bool> Causes
    {
        get
        {
            TheoryData<string, string, bool> all = [];
            foreach (var cause in GateCauses.All)
            {
                var isNever =
                    cause.Rule == "F1" || cause.Name is "no revision" or "no machine" or "no tool";
                all.Add(cause.Rule, cause.Name, !isNever);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Causes))]
    public void Grant_OfWhatForbids_WaivesExactlyThatRule(string rule, string name, bool isWaivable)
    {
        var facts = GateCauses.Named(name);

        var asked = Ask(facts, rule);

        Assert.Equal(isWaivable, asked.IsAccepted);
        if (asked.Value is not { } concession)
        {
            Assert.All(asked.Refusals, RecordWatch.AssertReadable);
            return;
        }

        Accept.All(concession.Grant(SamplePeople.QualityManager, SampleTime.Start));
        var before = WeldGate.Judge(facts);
        var after = WeldGate.Judge(facts with { Concessions = [concession] });
        Assert.Equal(RuleStanding.Waived, after.Single(v => v.RuleId == rule).Standing);
        Assert.Equal(concession.Id, after.Single(v => v.RuleId == rule).Concession!.Id);
        Assert.Equal(
            before.Where(v => v.RuleId != rule).Select(v => v.Standing),
            after.Where(v => v.RuleId != rule).Select(v => v.Standing)
        );
    }

    [Fact]
    public void Ask_BadInput_TellsAll()
    {
        var refusals = Concession
            .Ask(new SampleShop().Facts(), "F7", " ", SamplePeople.Inspector, SampleTime.Start)
            .Refusals;

        Assert.Equal(["role", "missing", "rule"], refusals.Select(r => r.Code));
    }

    [Fact]
    public void Ask_WhileOneIsOpen_IsRefused()
    {
        var facts = Unqualified();
        var first = Accept.Value(Ask(facts, "F4"));

        var second = Ask(facts with { Concessions = [first] }, "F4");

        Assert.Equal("open", Assert.Single(second.Refusals).Code);
    }

    /// <summary>Who asked, who grants, and whether the two signatures are those of an engineer and of a quality manager.</summary>
    [Theory]
    [InlineData("engineer", "quality", "")]
    [InlineData("quality", "engineer", "")]
    [InlineData("both", "quality", "")]
    [InlineData("both", "engineer", "")]
    [InlineData("engineer", "both", "")]
    [InlineData("engineer", "engineer", "second-person second-role")]
    [InlineData("engineer", "second engineer", "second-role")]
    [InlineData("both", "both", "second-person")]
    [InlineData("engineer", "inspector", "role")]
    public void Grant_ByThePair_AsksForBothRolesAndTwoPersons(
        string first,
        string second,
        string codes
    )
    {
        var concession = Accept.Value(Ask(Unqualified(), "F4", Actor(first)));
        var watch = new RecordWatch(concession);

        var outcome = concession.Grant(Actor(second), SampleTime.Start);

        Assert.Equal(codes, string.Join(' ', outcome.Refusals.Select(r => r.Code)));
        if (codes.Length > 0)
        {
            watch.AssertRefused(codes.Split(' ')[0], outcome.Refusals);
        }
        else
        {
            Assert.True(concession.IsSealed);
        }
    }

    [Theory]
    [InlineData(ConcessionState.Granted)]
    [InlineData(ConcessionState.Declined)]
    public void Decided_ConcessionIsClosed(ConcessionState state)
    {
        var concession = Accept.Value(Ask(Unqualified(), "F4"));
        Accept.All(
            state == ConcessionState.Granted
                ? concession.Grant(SamplePeople.QualityManager, SampleTime.Start)
                : concession.Decline("No.", SamplePeople.QualityManager, SampleTime.Start)
        );
        var watch = new RecordWatch(concession);

        watch.AssertRefused(
            "state",
            concession.Grant(SamplePeople.QualityManager, SampleTime.Start).Refusals
        );
        watch.AssertRefused(
            "state",
            concession.Decline("No.", SamplePeople.Engineer, SampleTime.Start).Refusals
        );
    }

    [Theory]
    [InlineData(ConcessionState.Asked)]
    [InlineData(ConcessionState.Declined)]
    public void Judge_WithoutTheSecondSignature_StillForbids(ConcessionState state)
    {
        var facts = Unqualified();
        var concession = Accept.Value(Ask(facts, "F4"));
        if (state == ConcessionState.Declined)
        {
            Accept.All(concession.Decline("No.", SamplePeople.QualityManager, SampleTime.Start));
        }

        Assert.Equal(RuleStanding.Forbids, F4(facts with { Concessions = [concession] }).Standing);
    }

    /// <summary>It names whom it lets through: another operator without certificate is still refused.</summary>
    [Fact]
    public void Judge_AnotherPersonThanNamed_StillForbids()
    {
        var concession = Granted(Unqualified());

        Assert.Equal(
            RuleStanding.Forbids,
            F4(
                Unqualified() with
                {
                    Welder = SamplePeople.SecondOperator,
                    Concessions = [concession],
                }
            ).Standing
        );
    }

    /// <summary>One run goes through; welding the step again is decided again.</summary>
    [Fact]
    public void Judge_AfterTheRunItLetThrough_ForbidsAgain()
    {
        var shop = new SampleShop();
        shop.Certificates.Clear();
        shop.Concessions.Add(Granted(shop.Facts()));

        var run = shop.Welded();

        Assert.Equal(RuleStanding.Waived, run.Gate.Single(v => v.RuleId == "F4").Standing);
        Assert.Equal(RuleStanding.Forbids, F4(shop.Facts()).Standing);
        Assert.Equal(RuleStanding.Forbids, F4(shop.Facts(20)).Standing);
    }

    private static WeldGateFacts Unqualified() => GateCauses.Named("no certificate");

    private static Concession Granted(WeldGateFacts facts)
    {
        var concession = Accept.Value(Ask(facts, "F4"));
        Accept.All(concession.Grant(SamplePeople.QualityManager, SampleTime.Start));
        return concession;
    }

    private static Outcome<Concession> Ask(WeldGateFacts facts, string rule, Actor? actor = null) =>
        Concession.Ask(facts, rule, Why, actor ?? SamplePeople.Engineer, SampleTime.Start);

    private static RuleVerdict F4(WeldGateFacts facts) =>
        WeldGate.Judge(facts).Single(v => v.RuleId == "F4");

    private static Actor Actor(string who) =>
        who switch
        {
            "engineer" => SamplePeople.Engineer,
            "second engineer" => SamplePeople.SecondEngineer,
            "quality" => SamplePeople.QualityManager,
            "inspector" => SamplePeople.Inspector,
            "both" => Both,
            _ => throw new ArgumentOutOfRangeException(nameof(who), who, "Unknown."),
        };
}
