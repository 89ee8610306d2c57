using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Testing.RecordLeakTest;

namespace WeldTrace.Web.Tests.Features.Testing;

/// <summary>The leak test of <see cref="SampleDesigns"/>: 2 bar, 600 s, 1E-5 Pa·m³/s.</summary>
public sealed class LeakTestHandlerTests(PostgresServerFixture server)
{
    [Theory]
    [InlineData("0", "", Verdict.Pass)]
    // 1000 spheres of 1 mm at about 1 bar in 600 s carry 1000 · π/6 mm³ · 0.1 MPa / 600 s = 8.7E-5 Pa·m³/s, above the limit.
    [InlineData("1000", "beside the start", Verdict.Fail)]
    public async Task Bubbles_Whole_AreJudgedAndRecordedOnce(
        string bubbles,
        string places,
        Verdict expected
    )
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        var form = Bubbles(f => (f.Bubbles, f.Places) = (bubbles, places));

        Accept.All(await RecordAsync(vessel, form));
        Accept.All(await RecordAsync(vessel, form));

        var test = await vessel.Site.Database.ReadAsync(db => db.LeakTests.SingleAsync());
        Assert.Equal((form.Id, LeakMethod.ImmersionBubble), (test.Id, test.Method));
        Assert.Equal(expected, test.Verdict);
        Assert.Equal(1, await vessel.Site.EntriesAsync(test.Id));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Bubbles_WithAWrongPassword_AreNotRecorded()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);

        var outcome = await RecordAsync(vessel, Bubbles(f => f.Password = "seven quiet ankers"));

        Assert.Equal("password:Password", WorkingSite.Text(outcome.Refusals));
        Assert.Equal(0, await vessel.Site.Database.ReadAsync(db => db.LeakTests.CountAsync()));
    }

    [Fact]
    public async Task Bubbles_WithUnreadableNumbers_TellsAll()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);

        var outcome = await RecordAsync(
            vessel,
            Bubbles(f =>
                (f.GaugePressure, f.DepthOfLiquid, f.Bubbles, f.ObservedSeconds) = (
                    "two",
                    null,
                    "some",
                    "1.5"
                )
            )
        );

        Assert.Equal(
            "number:GaugePressure number:DepthOfLiquid number:ObservedSeconds number:Bubbles",
            WorkingSite.Text(outcome.Refusals)
        );
        await NothingAsync(vessel);
    }

    [Theory]
    [InlineData("1.5", "600", "F15:GaugePressure")]
    [InlineData("2.0", "599", "F15:ObservedSeconds")]
    public async Task Bubbles_UnderTooLittlePressureOrTooShort_AreRefused(
        string bar,
        string seconds,
        string expected
    )
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);

        var outcome = await RecordAsync(
            vessel,
            Bubbles(f => (f.GaugePressure, f.ObservedSeconds) = (bar, seconds))
        );

        Assert.Equal(expected, WorkingSite.Text(outcome.Refusals));
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Bubbles_SeenWithoutAPlace_AreRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);

        var outcome = await RecordAsync(vessel, Bubbles(f => f.Bubbles = "4"));

        Assert.Equal("places:Places", WorkingSite.Text(outcome.Refusals));
    }

    [Fact]
    public async Task Test_ByARoleThatMayNot_OutOfTurn_OrOfAnUnknownStep_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 20);

        var byEngineer = await RecordAsync(vessel, Bubbles(), vessel.Engineer);
        var early = await RecordAsync(vessel, Bubbles());
        var nowhere = await RecordAsync(vessel, Bubbles(), sequence: 35);

        Assert.Equal("role: F1:", WorkingSite.Text(byEngineer.Refusals));
        Assert.Equal("F1:", WorkingSite.Text(early.Refusals));
        Assert.Equal("missing:", WorkingSite.Text(nowhere.Refusals));
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Test_WhileAnotherIsUnsigned_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        Accept.All(await RecordAsync(vessel, Bubbles()));

        var second = await RecordAsync(
            vessel,
            Bubbles(f => f.Id = Guid.CreateVersion7(SampleTime.Start.AddHours(9)))
        );

        Assert.Equal("unsigned:", WorkingSite.Text(second.Refusals));
        Assert.Equal(1, await vessel.Site.Database.ReadAsync(db => db.LeakTests.CountAsync()));
    }

    private static RecordLeakTestForm Bubbles(Action<RecordLeakTestForm>? edit = null)
    {
        var form = new RecordLeakTestForm
        {
            Id = Guid.CreateVersion7(SampleTime.Start),
            GaugePressure = "2.00",
            Liquid = "water",
            DepthOfLiquid = "100",
            AtmosphericPressure = "1013",
            ObservedSeconds = "600",
            Bubbles = "0",
            BubbleDiameter = "1",
            Gauge = "G-4",
            CautionsRead = true,
            Password = WorkingSite.Password,
        };
        edit?.Invoke(form);
        return form;
    }

    private static Task<Outcome> RecordAsync(
        RoutedVessel vessel,
        RecordLeakTestForm form,
        Actor? actor = null,
        int sequence = 30
    ) =>
        new RecordLeakTestHandler(
            vessel.Site.Database,
            vessel.Site.Passwords,
            vessel.Site.Arrivals,
            vessel.Site.Clock
        ).HandleAsync(
            vessel.Serial,
            sequence,
            LeakMethod.ImmersionBubble,
            form,
            actor ?? vessel.Inspector,
            CancellationToken.None
        );

    private static async Task NothingAsync(RoutedVessel vessel) =>
        Assert.Equal(0, await vessel.Site.Database.ReadAsync(db => db.LeakTests.CountAsync()));
}
