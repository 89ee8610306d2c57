using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Domain.Tracing;
using WeldTrace.Domain.Vessels;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Features.Vessels.Genealogy;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>What the genealogy of each vessel of the demonstration tells is compared with the records, each of them asked for by itself.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class GenealogyTests(DemoSite site)
{
    [Fact]
    public async Task EachVessel_TellsItsRunsWithToolMachineProcedureAndWelder()
    {
        foreach (var (vessel, genealogy) in await AllAsync())
        {
            var runs = await site.ReadAsync(db =>
                db.WeldRuns.AsNoTracking().Where(r => r.VesselId == vessel.Id).ToListAsync()
            );
            Same(vessel, genealogy, GenealogyGroup.Runs, runs.Select(r => r.Label));
            Same(vessel, genealogy, GenealogyGroup.Tools, runs.Select(r => r.ToolMark));
            Same(vessel, genealogy, GenealogyGroup.Machines, runs.Select(r => r.MachineName));
            Same(vessel, genealogy, GenealogyGroup.Procedures, runs.Select(r => r.ProcedureLabel));
            Assert.All(
                runs,
                r =>
                    Assert.Contains(
                        genealogy.In(GenealogyGroup.People),
                        n => n.Label == r.OperatorName
                    )
            );
        }
    }

    [Fact]
    public async Task EachVessel_TellsItsMaterialFindingsAndInstruments()
    {
        foreach (var (vessel, genealogy) in await AllAsync())
        {
            var id = vessel.Id;
            var findings = await site.ReadAsync(db =>
                db.Findings.AsNoTracking().Where(f => f.VesselId == id).ToListAsync()
            );
            var fitUps = await site.ReadAsync(db =>
                db.JointFitUps.AsNoTracking().Where(f => f.VesselId == id).ToListAsync()
            );
            var marks = genealogy.In(GenealogyGroup.Instruments).Select(n => n.Label).ToList();
            Same(vessel, genealogy, GenealogyGroup.Findings, findings.Select(f => f.Label));
            Same(
                vessel,
                genealogy,
                GenealogyGroup.MaterialLots,
                vessel.Components.Select(c => c.MaterialLotNumber)
            );
            Assert.All(fitUps, f => Assert.Contains(f.InstrumentMark, marks));
        }
    }

    [Fact]
    public async Task EachVessel_TellsOfNoThingThatIsNotConnectedWithIt()
    {
        foreach (var (vessel, genealogy) in await AllAsync())
        {
            var start = genealogy.In(GenealogyGroup.Vessel)[0];
            var apart = genealogy
                .Nodes.Select(n => n.Key)
                .Except(genealogy.ConnectedWith(start.Key));
            Assert.Equal([vessel.Serial], apart.Prepend(vessel.Serial));
        }
    }

    [Fact]
    public async Task EachVessel_WeldedOrTested_RestsOnCertificatesAndCalibrationsThatHeld()
    {
        var proofs = (await AllAsync()).SelectMany(p => p.Genealogy.Proofs).ToList();

        Assert.NotEmpty(proofs);
        Assert.Contains(proofs, p => p.Subject.Group == GenealogyGroup.Instruments && p.Holds);
        Assert.Contains(proofs, p => p.Subject.Group == GenealogyGroup.People && p.Holds);
    }

    [Fact]
    public async Task Page_ListsEveryThingOfTheDrawing_AndLeadsToIt()
    {
        var (vessel, genealogy) = (await AllAsync()).MaxBy(p => p.Genealogy.Nodes.Count);
        var visit = await site.VisitAsync(DemoPeople.Auditor);

        var page = await SiteVisit.PageAsync(await visit.GetAsync(Routes.Genealogy(vessel.Serial)));

        Assert.Equal(genealogy.Nodes.Count, page.QuerySelectorAll("[data-thing]").Length);
        Assert.Equal(genealogy.Links.Count, page.QuerySelectorAll("[data-line]").Length);
        Assert.Equal(genealogy.Nodes.Count, page.QuerySelectorAll("tr[id^=row-]").Length);
        foreach (var thing in page.QuerySelectorAll("[data-thing]"))
        {
            var address = thing.GetAttribute("href")!;
            var row = address.Split('#') is [_, var fragment]
                ? page.GetElementById(fragment)
                : null;
            Assert.True(
                row is not null || (await visit.GetAsync(address)).IsSuccessStatusCode,
                $"{thing.GetAttribute("aria-label")} leads to {address}."
            );
        }
    }

    private async Task<IReadOnlyList<(Vessel Vessel, Genealogy Genealogy)>> AllAsync()
    {
        await using var scope = site.Services.CreateAsyncScope();
        var reader = scope.ServiceProvider.GetRequiredService<GenealogyReader>();
        List<(Vessel, Genealogy)> all = [];
        foreach (
            var serial in await site.ReadAsync(db => db.Vessels.Select(v => v.Serial).ToListAsync())
        )
        {
            var found = (await reader.FindAsync(serial, CancellationToken.None))!;
            all.Add((found.Vessel, found.Genealogy));
        }

        return all;
    }

    private static void Same(
        Vessel vessel,
        Genealogy genealogy,
        GenealogyGroup group,
        IEnumerable<string> labels
    ) =>
        Assert.Equal(
            labels.Distinct().Order(StringComparer.Ordinal).Prepend(vessel.Serial),
            genealogy
                .In(group)
                .Select(n => n.Label)
                .Order(StringComparer.Ordinal)
                .Prepend(vessel.Serial)
        );
}
