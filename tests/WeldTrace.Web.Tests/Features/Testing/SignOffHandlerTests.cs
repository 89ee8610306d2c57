using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Testing.SignOff;

namespace WeldTrace.Web.Tests.Features.Testing;

/// <summary>Step 60 accepts the vessel.</summary>
public sealed class SignOffHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Acceptance_OfAFinishedVessel_IsSignedOnce()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 60);
        var form = Form();

        Accept.All(await SignAsync(vessel, form));
        Accept.All(await SignAsync(vessel, form));

        Assert.Equal(VesselState.Accepted, (await vessel.NowAsync()).State);
        var signOff = await vessel.Site.Database.ReadAsync(db => db.StepSignOffs.SingleAsync());
        Assert.Equal(
            (form.Id, "Looks even", "Ines Falk"),
            (signOff.Id, signOff.Remark, signOff.PrintedName)
        );
        Assert.Equal(
            [StepSignOff.MeaningOf(StepKind.Acceptance)],
            await vessel.MeaningsAsync(signOff.Id)
        );
        Assert.Equal(1, await vessel.Site.EntriesAsync(signOff.Id));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Acceptance_ByARoleThatMayNot_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 60);

        var outcome = await SignAsync(vessel, Form(), vessel.Engineer);

        Assert.Equal("role:", WorkingSite.Text(outcome.Refusals));
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Acceptance_BySomebodyWhoWelded_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 60);

        var outcome = await SignAsync(vessel, Form(), await vessel.WelderWhoInspectsAsync());

        Assert.Equal("F17:", WorkingSite.Text(outcome.Refusals));
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Acceptance_WithAWrongPassword_OrTooLongARemark_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 60);

        var wrong = await SignAsync(vessel, Form(f => f.Password = "seven quiet ankers"));
        var wordy = await SignAsync(vessel, Form(f => f.Remark = new string('x', 2000)));

        Assert.Equal("password:Password", WorkingSite.Text(wrong.Refusals));
        Assert.Equal("remark:Remark", WorkingSite.Text(wordy.Refusals));
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Acceptance_BeforeTheRouteIsDone_SaysWhatIsMissing()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 50);

        var outcome = await SignAsync(vessel, Form());

        Assert.Equal("F1: route:", WorkingSite.Text(outcome.Refusals));
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task SignOff_OfAStepThatIsTested_OrIsNotThere_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);

        var tested = await SignAsync(vessel, Form(), sequence: 30);
        var nowhere = await SignAsync(vessel, Form(), sequence: 65);

        Assert.Equal("step:", WorkingSite.Text(tested.Refusals));
        Assert.Equal("missing:", WorkingSite.Text(nowhere.Refusals));
        await NothingAsync(vessel);
    }

    private static SignOffForm Form(Action<SignOffForm>? edit = null)
    {
        var form = new SignOffForm
        {
            Id = Guid.CreateVersion7(SampleTime.Start),
            Remark = "Looks even",
            Password = WorkingSite.Password,
        };
        edit?.Invoke(form);
        return form;
    }

    private static Task<Outcome> SignAsync(
        RoutedVessel vessel,
        SignOffForm form,
        Actor? actor = null,
        int sequence = 60
    ) =>
        new SignOffHandler(
            vessel.Site.Database,
            vessel.Site.Passwords,
            vessel.Site.Clock
        ).HandleAsync(
            vessel.Serial,
            sequence,
            form,
            actor ?? vessel.Inspector,
            CancellationToken.None
        );

    private static async Task NothingAsync(RoutedVessel vessel)
    {
        Assert.Equal(0, await vessel.Site.Database.ReadAsync(db => db.StepSignOffs.CountAsync()));
        Assert.Equal(0, await vessel.Site.Database.ReadAsync(db => db.Signatures.CountAsync()));
    }
}
