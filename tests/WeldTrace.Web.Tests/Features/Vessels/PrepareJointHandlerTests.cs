using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Vessels.Prepare;

namespace WeldTrace.Web.Tests.Features.Vessels;

public sealed class PrepareJointHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task CleanAndFitUp_AreKeptWithTheVesselsHistory()
    {
        await using var site = await OpenAsync(server);
        var handler = Handler(site);

        Accept.All(
            await handler.CleanAsync(
                "NR4-0001",
                "J1",
                new()
                {
                    Method = "acetone",
                    FixtureIsClean = true,
                    MinutesAgo = "20",
                },
                SamplePeople.Operator,
                CancellationToken.None
            ),
            await handler.FitUpAsync(
                "NR4-0001",
                "J1",
                new()
                {
                    Gap = "0,10",
                    Mismatch = "0.05",
                    InstrumentMark = "CAL-7",
                },
                SamplePeople.Operator,
                CancellationToken.None
            )
        );

        var history = await site.Database.ReadAsync(db =>
            db.FindVesselHistoryAsync("NR4-0001", CancellationToken.None)
        );
        var facts = history!.Material.Preparation;
        Assert.Equal(site.Clock.GetUtcNow().AddMinutes(-20), facts.CleaningOf("J1")!.CleanedAt);
        Assert.Equal(new Measured("0.10", "mm"), facts.FitUpOf("J1")!.Gap);
        Assert.Equal(
            2,
            await site.Database.ReadAsync(db =>
                db.LedgerEntries.CountAsync(e =>
                    e.Vessels.Contains(history.Vessel.Id) && e.RecordKind.StartsWith("joint-")
                )
            )
        );
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Clean_NoSuchJointOrBadNumber_Refused()
    {
        await using var site = await OpenAsync(server);
        var handler = Handler(site);

        var joint = await handler.CleanAsync(
            "NR4-0001",
            "J9",
            new() { Method = "acetone", FixtureIsClean = true },
            SamplePeople.Operator,
            CancellationToken.None
        );
        var minutes = await handler.CleanAsync(
            "NR4-0001",
            "J1",
            new() { MinutesAgo = "soon" },
            SamplePeople.Operator,
            CancellationToken.None
        );
        var auditor = await handler.CleanAsync(
            "NR4-0001",
            "J1",
            new() { Method = "acetone", FixtureIsClean = true },
            SamplePeople.Auditor,
            CancellationToken.None
        );

        Assert.Equal("missing", Assert.Single(joint.Refusals).Code);
        Assert.Equal("number:MinutesAgo", WorkingSite.Text(minutes.Refusals));
        Assert.Equal("role", Assert.Single(auditor.Refusals).Code);
        Assert.Equal(0, await site.Database.ReadAsync(db => db.JointCleanings.CountAsync()));
    }

    [Fact]
    public async Task FitUp_UnknownInstrument_NamesTheField()
    {
        await using var site = await OpenAsync(server);

        var outcome = await Handler(site)
            .FitUpAsync(
                "NR4-0001",
                "J1",
                new()
                {
                    Gap = "0.1",
                    Mismatch = "0.1",
                    InstrumentMark = "CAL-99",
                },
                SamplePeople.Operator,
                CancellationToken.None
            );

        Assert.Equal("F13:InstrumentMark", WorkingSite.Text(outcome.Refusals));
    }

    private static PrepareJointHandler Handler(WorkingSite site) =>
        new(site.Database, site.Day, site.Clock);

    private static async Task<WorkingSite> OpenAsync(PostgresServerFixture server)
    {
        var site = await WorkingSite.OpenAsync(server);
        var (design, lot) = (SampleDesigns.Released(), SampleMaterial.Lot());
        await site.Database.AddAsync(
            design,
            lot,
            SampleVessels.Planned(design, lot),
            SampleInstruments.Caliper()
        );
        return site;
    }
}
