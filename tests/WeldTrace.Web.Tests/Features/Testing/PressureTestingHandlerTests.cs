using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Testing.PressureTesting;
using WeldTrace.Web.Features.Testing.ShowTest;

namespace WeldTrace.Web.Tests.Features.Testing;

/// <summary>The ladder of <see cref="SampleDesigns"/>: 12 bar for 600 s, back to zero within 0.05 mm, 18 bar for 300 s.</summary>
public sealed class PressureTestingHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Test_StageByStage_IsJudgedAtItsEnd()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        var form = SetUp();

        Accept.All(await BeginAsync(vessel, form));
        Accept.All(await BeginAsync(vessel, form));
        Accept.All(await StageAsync(vessel, Hold(1, "12.05", "12.04")));
        Accept.All(await StageAsync(vessel, Hold(1, "12.05", "12.04")));
        Assert.Null((await TestAsync(vessel)).Verdict);
        Accept.All(await StageAsync(vessel, Back("130.01")));
        Accept.All(await StageAsync(vessel, Hold(3, "18.05", "18.04")));

        var test = await TestAsync(vessel);
        Assert.Equal((form.Id, 3, Verdict.Pass), (test.Id, test.Stages.Count, test.Verdict));
        Assert.Equal(4, await vessel.Site.EntriesAsync(test.Id));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Stage_ThatDoesNotHold_EndsTheTest()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        Accept.All(await BeginAsync(vessel, SetUp()));

        Accept.All(await StageAsync(vessel, Hold(1, "12.05", "11.00")));

        Assert.Equal(Verdict.Fail, (await TestAsync(vessel)).Verdict);
        var next = await StageAsync(vessel, Back("130.01"));
        Assert.Equal("stage:", WorkingSite.Text(next.Refusals));
    }

    /// <summary>The engineer signs that a failed hold is repeated; the first result stays with the test and in the ledger.</summary>
    [Fact]
    public async Task Hold_ThatFailed_IsRepeatedByASignedDecision()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        Accept.All(await BeginAsync(vessel, SetUp()));
        Accept.All(await StageAsync(vessel, Hold(1, "12.05", "11.00")));
        var id = (await TestAsync(vessel)).Id;
        Task<Outcome> RepeatAsync(Actor actor, string? password, string? reason = "Fitting.") =>
            new DecideDepartureHandler(
                vessel.Site.Database,
                vessel.Site.Passwords,
                vessel.Site.Clock
            ).RepeatAsync(
                id,
                new() { Reason = reason, Password = password },
                actor,
                CancellationToken.None
            );

        var unsigned = await RepeatAsync(vessel.Engineer, "wrong");
        var byInspector = await RepeatAsync(vessel.Inspector, WorkingSite.Password, "");
        Accept.All(
            await RepeatAsync(vessel.Engineer, WorkingSite.Password),
            await StageAsync(vessel, Hold(1, "12.05", "12.04"))
        );

        Assert.False(unsigned.IsAccepted);
        Assert.Equal("role: missing:Reason second-person:", WorkingSite.Text(byInspector.Refusals));
        var test = await TestAsync(vessel);
        Assert.Equal(Verdict.Pass, Assert.Single(test.Stages).Verdict);
        Assert.Equal("11.00", Assert.Single(test.Departures!).Reading.EndPressure!.Digits);
        Assert.Contains(PlanDeparture.RepeatMeaning, await vessel.MeaningsAsync(id));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    /// <summary>A second place is measured before and at zero again; both are read back, and what is missing is told with its place.</summary>
    [Fact]
    public async Task FurtherPlaces_AreKeptAndMeasuredAgain()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        Accept.All(
            await BeginAsync(
                vessel,
                SetUp(f =>
                    f.FurtherPlaces = [
                        new(),
                        new() { Name = "height of the head", Before = "250.00" },
                    ]
                )
            ),
            await StageAsync(vessel, Hold(1, "12.05", "12.04"))
        );

        var missing = await StageAsync(vessel, Back("130.000"));
        var back = Back("130.000");
        back.FurtherDimensions = ["250.01"];
        Accept.All(await StageAsync(vessel, back));

        Assert.Equal("number:FurtherDimensions", WorkingSite.Text(missing.Refusals));
        Assert.Contains(
            "height of the head",
            missing.Refusals[0].Sentence,
            StringComparison.Ordinal
        );
        var test = await TestAsync(vessel);
        Assert.Equal("height of the head", Assert.Single(test.SetUp.FurtherPlaces!).Name);
        Assert.Equal("250.01", Assert.Single(test.Stages[1].Reading.FurtherDimensions!).Digits);
        Assert.Equal(Verdict.Pass, test.Stages[1].Verdict);
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Begin_ByARoleThatMayNot_OutOfTurn_OrOfAnUnknownStep_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);

        var byQuality = await BeginAsync(vessel, SetUp(), vessel.Quality);
        var nowhere = await BeginAsync(vessel, SetUp(), sequence: 45);

        Assert.Equal("role: F1:", WorkingSite.Text(byQuality.Refusals));
        Assert.Equal("missing:", WorkingSite.Text(nowhere.Refusals));
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Begin_WithoutReadingTheCautions_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);

        var outcome = await BeginAsync(vessel, SetUp(f => f.CautionsRead = false));

        Assert.Equal("CautionsRead", Assert.Single(outcome.Refusals).Field);
        await NothingAsync(vessel);
    }

    /// <summary>F14: the acknowledgement of the stored energy is a signature like any other.</summary>
    [Fact]
    public async Task Begin_IsSignedByWhoeverReadTheCautions()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        var wrong = await BeginAsync(vessel, SetUp(f => f.Password = "seven quiet ankers"));
        Assert.Equal("password:Password", WorkingSite.Text(wrong.Refusals));
        await NothingAsync(vessel);

        Accept.All(await BeginAsync(vessel, SetUp()));

        var test = await TestAsync(vessel);
        var signature = await vessel.Site.Database.ReadAsync(db =>
            db.Signatures.SingleAsync(s => s.SignedId == test.Id)
        );
        Assert.Equal(HazardAcknowledgement.Meaning, signature.Meaning);
        Assert.Equal(test.SetUp.Acknowledgement!.PrintedName, signature.PrintedName);
    }

    [Fact]
    public async Task Begin_WithUnreadableNumbers_TellsAll()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);

        var outcome = await BeginAsync(
            vessel,
            SetUp(f => (f.GaugeUncertainty, f.DimensionBefore) = ("small", ""))
        );

        Assert.Equal(
            "number:GaugeUncertainty number:DimensionBefore",
            WorkingSite.Text(outcome.Refusals)
        );
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Stage_WithoutATest_OrBeyondTheLadder_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        var before = await StageAsync(vessel, Hold(1, "12.05", "12.04"));
        Accept.All(await BeginAsync(vessel, SetUp()));

        var beyond = await StageAsync(vessel, Hold(9, "12.05", "12.04"));
        var skipped = await StageAsync(vessel, Hold(3, "18.05", "18.04"));

        Assert.Equal("stage:", WorkingSite.Text(before.Refusals));
        Assert.Equal("stage:", WorkingSite.Text(beyond.Refusals));
        Assert.Equal("stage:", WorkingSite.Text(skipped.Refusals));
        Assert.Empty((await TestAsync(vessel)).Stages);
    }

    [Fact]
    public async Task Stage_ByARoleThatMayNot_OrWithUnreadableNumbers_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        Accept.All(await BeginAsync(vessel, SetUp()));

        var byEngineer = await StageAsync(vessel, Hold(1, "12.05", "12.04"), vessel.Engineer);
        var unread = await StageAsync(vessel, Hold(1, "twelve", ""));

        Assert.Equal("role:", WorkingSite.Text(byEngineer.Refusals));
        Assert.Equal("number:StartPressure number:EndPressure", WorkingSite.Text(unread.Refusals));
        Assert.Empty((await TestAsync(vessel)).Stages);
    }

    private static BeginPressureForm SetUp(Action<BeginPressureForm>? edit = null)
    {
        var form = new BeginPressureForm
        {
            Id = Guid.CreateVersion7(SampleTime.Start),
            Gauge = "G-7",
            GaugeUncertainty = "0.01",
            Thermometer = "T-2",
            DimensionInstrument = "CAL-7",
            TemperatureUncertainty = "0.1",
            AtmosphericPressure = "1013",
            DimensionName = "outer diameter at mid-length",
            DimensionBefore = "130.000",
            DimensionUncertainty = "0.005",
            CautionsRead = true,
            Password = WorkingSite.Password,
        };
        edit?.Invoke(form);
        return form;
    }

    private static PressureStageForm Hold(int number, string start, string end) =>
        new()
        {
            StageNumber = number,
            StartPressure = start,
            StartTemperature = "20.0",
            EndPressure = end,
            EndTemperature = "20.0",
            HeldSeconds = "620",
        };

    private static PressureStageForm Back(string millimetres) =>
        new() { StageNumber = 2, Dimension = millimetres };

    private static PressureTestingHandler Handler(RoutedVessel vessel) =>
        new(vessel.Site.Database, vessel.Site.Passwords, vessel.Site.Clock);

    private static Task<Outcome> BeginAsync(
        RoutedVessel vessel,
        BeginPressureForm form,
        Actor? actor = null,
        int sequence = 40
    ) =>
        Handler(vessel)
            .BeginAsync(
                vessel.Serial,
                sequence,
                form,
                actor ?? vessel.Inspector,
                CancellationToken.None
            );

    private static Task<Outcome> StageAsync(
        RoutedVessel vessel,
        PressureStageForm form,
        Actor? actor = null
    ) =>
        Handler(vessel)
            .RecordStageAsync(
                vessel.Serial,
                40,
                form,
                actor ?? vessel.Inspector,
                CancellationToken.None
            );

    private static Task<PressureTest> TestAsync(RoutedVessel vessel) =>
        vessel.Site.Database.ReadAsync(db => db.PressureTests.SingleAsync());

    private static async Task NothingAsync(RoutedVessel vessel) =>
        Assert.Equal(0, await vessel.Site.Database.ReadAsync(db => db.PressureTests.CountAsync()));
}
