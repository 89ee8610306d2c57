using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Tests.Access;
using WeldTrace.Web.Tests.Lists;

namespace WeldTrace.Web.Tests.Features.Trace;

/// <summary>What the search finds is compared with the records, each of them read and looked through one by one.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class TraceTests(DemoSite site)
{
    [Fact]
    public async Task Tool_FindsTheVesselsOfItsRuns() =>
        await AssertRunsAsync(TraceFields.Tool, r => r.ToolMark);

    [Fact]
    public async Task Machine_FindsTheVesselsOfItsRuns() =>
        await AssertRunsAsync(TraceFields.Machine, r => r.MachineName);

    [Fact]
    public async Task Operator_FindsTheVesselsOfTheirRuns() =>
        await AssertRunsAsync(TraceFields.Operator, r => r.OperatorName);

    [Fact]
    public async Task Procedure_FindsTheVesselsOfTheRevision() =>
        await AssertRunsAsync(TraceFields.Procedure, r => r.ProcedureLabel);

    [Fact]
    public async Task MaterialLot_FindsTheVesselsMadeOfIt()
    {
        var vessels = await site.ReadAsync(db => db.Vessels.AsNoTracking().ToListAsync());
        var made = vessels
            .SelectMany(v => v.Components.Select(c => (c.MaterialLotNumber, v.Serial)))
            .ToLookup(p => p.MaterialLotNumber, p => p.Serial);

        Assert.NotEmpty(made);
        foreach (var lot in made)
        {
            await AssertFoundAsync(lot, (TraceFields.Lot, lot.Key));
        }
    }

    [Fact]
    public async Task Part_FindsTheOneVesselItIsIn()
    {
        var parts = await site.ReadAsync(db =>
            db.Components.Where(c => c.VesselId != null).Take(5).ToListAsync()
        );

        Assert.NotEmpty(parts);
        foreach (var part in parts)
        {
            await AssertFoundAsync([part.VesselSerial!], (TraceFields.Component, part.Serial));
        }
    }

    [Fact]
    public async Task Instrument_FindsTheVesselsMeasuredWithIt()
    {
        var tests = await site.ReadAsync(AllTestsAsync);
        var fits = await site.ReadAsync(db => db.JointFitUps.AsNoTracking().ToListAsync());
        var serials = await site.ReadAsync(db =>
            db.Vessels.ToDictionaryAsync(v => v.Id, v => v.Serial)
        );
        foreach (var instrument in await site.ReadAsync(db => db.Instruments.ToListAsync()))
        {
            await AssertFoundAsync(
                [
                    .. tests
                        .Where(t => t.Instruments?.Any(i => i.Id == instrument.Id) is true)
                        .Select(t => serials[t.VesselId]),
                    .. fits.Where(f => f.InstrumentId == instrument.Id)
                        .Select(f => serials[f.VesselId]),
                ],
                (TraceFields.Instrument, instrument.Mark)
            );
        }
    }

    [Fact]
    public async Task Finding_FindsItsVessel_AndThoseThatItHeld()
    {
        foreach (var finding in await site.ReadAsync(db => db.Findings.ToListAsync()))
        {
            var held = await site.ReadAsync(db =>
                db.Findings.Where(f => f.EvidenceId == finding.Id)
                    .Select(f => f.VesselSerial)
                    .ToListAsync()
            );
            await AssertFoundAsync(
                [finding.VesselSerial, .. held],
                (TraceFields.Finding, finding.Label)
            );
        }
    }

    [Fact]
    public async Task ToolAndDays_FindOnlyWeldsWithThatToolOnThoseDays()
    {
        var zone = await site.ReadAsync(db => db.Sites.SingleAsync());
        var runs = await RunsAsync();
        foreach (var day in runs.Select(r => (r.ToolMark, Day: zone.DayOf(r.StartedAt))).Distinct())
        {
            var text = day.Day.ToString(
                "yyyy-MM-dd",
                System.Globalization.CultureInfo.InvariantCulture
            );
            await AssertFoundAsync(
                runs.Where(r => r.ToolMark == day.ToolMark && zone.DayOf(r.StartedAt) == day.Day)
                    .Select(r => r.VesselSerial),
                (TraceFields.Tool, day.ToolMark),
                (TraceFields.From, text),
                (TraceFields.Until, text)
            );
        }
    }

    [Fact]
    public async Task Certificate_FindsItsHoldersWeldsWhileItHeld()
    {
        var zone = await site.ReadAsync(db => db.Sites.SingleAsync());
        var runs = await RunsAsync();
        foreach (var certificate in await site.ReadAsync(db => db.Certificates.ToListAsync()))
        {
            await AssertFoundAsync(
                runs.Where(r =>
                        r.OperatorId == certificate.PersonId
                        && zone.DayOf(r.StartedAt) >= certificate.Text.TestedOn
                        && zone.DayOf(r.StartedAt) < certificate.ExpiresOn
                    )
                    .Select(r => r.VesselSerial),
                (TraceFields.Certificate, certificate.Number)
            );
        }
    }

    [Theory]
    [InlineData(TraceFields.Tool, "T-9999")]
    [InlineData(TraceFields.Operator, "Nobody Here")]
    [InlineData(TraceFields.Procedure, "WP-9 rev Z")]
    [InlineData(TraceFields.Finding, "F-x")]
    [InlineData(TraceFields.From, "tomorrow")]
    public async Task Unknown_IsSaidAtItsField_AndNothingIsFound(string field, string value)
    {
        var page = await SiteVisit.PageAsync(
            await (await site.VisitAsync(DemoPeople.Auditor)).GetAsync(TraceFields.Of(field, value))
        );

        Assert.NotNull(page.QuerySelector(".error-summary"));
        Assert.NotNull(page.QuerySelector($"[name={field}][aria-invalid=true]"));
        Assert.Empty(page.QuerySelectorAll("tbody tr"));
    }

    private static async Task<List<TestRecord>> AllTestsAsync(WeldTraceDbContext db) =>
        [
            .. await db.LeakTests.AsNoTracking().ToListAsync(),
            .. await db.PressureTests.AsNoTracking().ToListAsync(),
            .. await db.Sections.AsNoTracking().ToListAsync(),
        ];

    private Task<List<WeldRun>> RunsAsync() =>
        site.ReadAsync(db => db.WeldRuns.AsNoTracking().ToListAsync());

    private async Task AssertRunsAsync(string field, Func<WeldRun, string> name)
    {
        var runs = await RunsAsync();
        Assert.NotEmpty(runs);
        foreach (var group in runs.GroupBy(name))
        {
            await AssertFoundAsync(group.Select(r => r.VesselSerial), (field, group.Key));
        }
    }

    private async Task AssertFoundAsync(
        IEnumerable<string> serials,
        params (string Field, string Value)[] asked
    )
    {
        var question = string.Join(
            '&',
            asked.Select(a => $"{a.Field}={Uri.EscapeDataString(a.Value)}")
        );
        var answer = await (await site.VisitAsync(DemoPeople.Auditor)).GetAsync(
            $"{Routes.TraceCsv}?{question}"
        );
        var lines = await CsvLines.OfAsync(answer);
        Assert.Equal(
            [question, .. serials.Distinct().Order(StringComparer.Ordinal)],
            lines.Skip(1).Select(l => l[0]).Prepend(question)
        );
    }
}
