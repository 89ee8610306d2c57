using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Lots.Make;
using WeldTrace.Web.Features.Lots.Show;
using WeldTrace.Web.Features.Testing.ShowTest;

namespace WeldTrace.Web.Tests.Features.Lots;

/// <summary>A site with four planned vessels whose design asks for one section of each lot.</summary>
internal sealed class LotSite : IAsyncDisposable
{
    private LotSite(WorkingSite site) => Site = site;

    public WorkingSite Site { get; }

    public required Actor Engineer { get; init; }

    public required Actor Inspector { get; init; }

    public required VesselDesign Design { get; init; }

    public required ProcedureRevision Procedure { get; init; }

    public required IReadOnlyList<Vessel> Vessels { get; init; }

    public LotHandler Lots => new(Site.Database, Site.Desk);

    public static async Task<LotSite> OpenAsync(PostgresServerFixture server)
    {
        var site = await WorkingSite.OpenAsync(server);
        var tools = SampleTools.Design();
        var procedure = SampleProcedures.Released(tools);
        var design = SampleLots.Design(SampleLots.Plan());
        var material = SampleMaterial.Lot();
        var vessels = SampleLots.Vessels(design, material, 4);
        await site.Database.AddAsync([tools, procedure, design, material, .. vessels]);
        var inspector = SamplePeople.Entered("Ines Falk", Role.Inspector);
        var shop = new LotSite(site)
        {
            Engineer = await site.EnterAsync("Edda Lund", Role.Engineer),
            Inspector = await site.EnterAsync(inspector),
            Design = design,
            Procedure = procedure,
            Vessels = vessels,
        };
        await site.Database.AddAsync([.. SampleCertificates.AllMethods(inspector)]);
        return shop;
    }

    public MakeLotForm Form() =>
        new()
        {
            Number = "L-1",
            DesignId = Design.Id,
            ProcedureId = Procedure.Id,
            From = SampleTime.Day,
            Until = SampleTime.Day.AddDays(9),
        };

    public Task<Outcome<ProductionLot>> MakeAsync(MakeLotForm form, Actor? actor = null) =>
        new MakeLotHandler(Site.Database, Site.Clock).HandleAsync(
            form,
            actor ?? Engineer,
            CancellationToken.None
        );

    public Task<Outcome> ChooseAsync(Guid id, string password = WorkingSite.Password) =>
        Lots.ChooseAsync(id, new() { Password = password }, Inspector, CancellationToken.None);

    public Task<Outcome> AcceptAsync(Guid id) =>
        Lots.AcceptAsync(
            id,
            new() { Password = WorkingSite.Password },
            Inspector,
            CancellationToken.None
        );

    public async Task<ProductionLot> SampledAsync()
    {
        var lot = Accept.Value(await MakeAsync(Form()));
        Accept.All(await ChooseAsync(lot.Id));
        return await Site.ReadAsync<ProductionLot>(lot.Id);
    }

    /// <summary>Brings the sample to its section, records it and signs it.</summary>
    public async Task SignSectionAsync(ProductionLot lot, SampleTests.Hook measured)
    {
        var id = lot.Samples[0].VesselId;
        await Site.ChangeAsync<Vessel>(
            id,
            vessel =>
            {
                Outcome last = Outcome.Accepted;
                while (vessel.NextStep is { Sequence: < 50 } next)
                {
                    last = vessel.PassStep(next.Sequence, SamplePeople.Operator, SampleTime.Start);
                }

                return last;
            }
        );
        var test = await RecordAsync(id, measured);
        Accept.All(
            await new SignTestHandler(Site.Database, Site.Passwords, Site.Clock).SignAsync(
                test,
                new() { Password = WorkingSite.Password },
                Inspector,
                CancellationToken.None
            )
        );
    }

    /// <summary>What the check of the ledger complains of, but for the photograph, which exists as a hash only.</summary>
    public async Task<IReadOnlyList<string>> LedgerProblemsAsync() =>
        [
            .. (await Site.LedgerProblemsAsync()).Where(p =>
                !p.StartsWith("The file ddd", StringComparison.Ordinal)
            ),
        ];

    public ValueTask DisposeAsync() => Site.DisposeAsync();

    private async Task<Guid> RecordAsync(Guid vesselId, SampleTests.Hook measured)
    {
        await using var db = Site.Database.CreateDbContext();
        var vessel = await db.Vessels.SingleAsync(v => v.Id == vesselId);
        var at = Site.Clock.GetUtcNow();
        var facts = await db.FindTestFactsAsync(
            vessel.Serial,
            50,
            await db.ExaminerAsync(Inspector, at, CancellationToken.None),
            CancellationToken.None
        );
        var section = Accept.Value(
            SampleTests.Section(facts! with { Typed = SampleTests.Typed }, measured, Inspector, at)
        );
        db.Add(section);
        Accept.All(await db.SaveAsync(CancellationToken.None));
        return section.Id;
    }
}
