using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Tools.Designs;
using WeldTrace.Web.Features.Tools.Enter;
using WeldTrace.Web.Features.Tools.Inspect;
using WeldTrace.Web.Features.Tools.Parts;

namespace WeldTrace.Web.Tests.Features.Tools;

public sealed class ToolActsTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Inspect_WornBelowTheLimit_HoldsTheToolWithALedgerEntry()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (tool, _) = await EnterAsync(site);
        await site.Database.AddAsync(SampleInstruments.Caliper());

        var outcome = await InspectAsync(site, tool, Wear("2,80", "4.95", " CAL-7 "));

        Assert.Empty(outcome.Refusals);
        var now = await site.ReadAsync<Tool>(tool);
        Assert.Equal(ToolState.Held, now.State);
        Assert.Equal(new Measured("2.80", "mm"), now.LatestMeasured!.Measured!.PinLength);
        Assert.Equal(2, await site.EntriesAsync(tool));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Inspect_UnknownInstrument_NamesTheFieldAndKeepsNothing()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (tool, _) = await EnterAsync(site);

        var unread = await InspectAsync(
            site,
            tool,
            new() { Kind = nameof(ToolInspectionKind.Wear), PinLength = "long" }
        );
        var refused = await InspectAsync(site, tool, Wear("2.9", "4.95", "CAL-99"));

        Assert.Equal(
            "number:PinLength number:PinDiameter verdict:Verdict",
            WorkingSite.Text(unread.Refusals)
        );
        Assert.Equal("F13:InstrumentMark", WorkingSite.Text(refused.Refusals));
        Assert.Null((await site.ReadAsync<Tool>(tool)).LatestMeasured);
    }

    [Fact]
    public async Task Inspect_Auditor_Refused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (tool, _) = await EnterAsync(site);

        var outcome = await InspectAsync(
            site,
            tool,
            new() { Kind = nameof(ToolInspectionKind.Cleaned), Verdict = InspectToolHandler.Good },
            SamplePeople.Auditor
        );

        Assert.Equal("role", Assert.Single(outcome.Refusals).Code);
    }

    [Fact]
    public async Task FitPart_MarkOfAnotherTool_Refused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (first, design) = await EnterAsync(site, hasSeparateParts: true);
        var second = SampleTools.InService(design, "T-15-02");
        await site.Database.AddAsync(second);

        var taken = await FitAsync(site, first, "T-15-02-P1");
        var fitted = await FitAsync(site, first, "P-77");

        Assert.Equal("mark:Mark", WorkingSite.Text(taken.Refusals));
        Assert.Empty(fitted.Refusals);
        Assert.Equal("P-77", (await site.ReadAsync<Tool>(first)).Pin!.Mark);
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Enter_SeparatePartsTaken_NamesTheField()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (_, design) = await EnterAsync(site, hasSeparateParts: true);
        var handler = new EnterToolHandler(site.Database, site.Clock);

        var taken = await handler.HandleAsync(
            new()
            {
                Mark = "T-15-03",
                DesignId = design.Id,
                Pin = "T-15-01-P1",
                Shoulder = "S9",
            },
            SamplePeople.Engineer,
            CancellationToken.None
        );

        Assert.Equal("mark:Pin", WorkingSite.Text(taken.Refusals));
    }

    [Fact]
    public async Task LayDown_AndFileEvidence_AreKept()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var design = SampleTools.Design();
        await site.Database.AddAsync(design);
        var handler = new ToolUpkeepHandler(site.Database, site.Desk);
        var form = new ToolUpkeepForm
        {
            LeastPinLength = "2.90",
            LeastPinDiameter = "4.9",
            InspectEvery = "5",
            InspectionProcedure = "WI-31",
        };

        Accept.All(
            await handler.LayDownAsync(
                design.Id,
                form,
                SamplePeople.Engineer,
                CancellationToken.None
            ),
            await handler.FileEvidenceAsync(
                design.Id,
                new() { File = WorkingSite.Paper() },
                SamplePeople.Engineer,
                CancellationToken.None
            )
        );
        var none = await handler.FileEvidenceAsync(
            design.Id,
            new(),
            SamplePeople.Engineer,
            CancellationToken.None
        );

        var now = await site.ReadAsync<ToolDesign>(design.Id);
        Assert.Equal("2.90", now.Upkeep!.LeastPinLength.Digits);
        Assert.Null(now.Upkeep.InspectEveryDays);
        Assert.NotNull(now.LifeEvidenceSha256);
        Assert.Equal("file:File", WorkingSite.Text(none.Refusals));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    private static async Task<(Guid Tool, ToolDesign Design)> EnterAsync(
        WorkingSite site,
        bool hasSeparateParts = false
    )
    {
        var design = SampleTools.Design(hasSeparateParts: hasSeparateParts);
        var tool = SampleTools.InService(design);
        await site.Database.AddAsync(design, tool);
        return (tool.Id, design);
    }

    private static InspectToolForm Wear(string length, string diameter, string instrument) =>
        new()
        {
            Kind = nameof(ToolInspectionKind.Wear),
            Verdict = InspectToolHandler.Good,
            PinLength = length,
            PinDiameter = diameter,
            InstrumentMark = instrument,
        };

    private static Task<Outcome> InspectAsync(
        WorkingSite site,
        Guid tool,
        InspectToolForm form,
        Actor? actor = null
    ) =>
        new InspectToolHandler(site.Desk).HandleAsync(
            tool,
            form,
            actor ?? SamplePeople.Operator,
            CancellationToken.None
        );

    private static Task<Outcome> FitAsync(WorkingSite site, Guid tool, string mark) =>
        new FitPartHandler(site.Desk).HandleAsync(
            tool,
            new()
            {
                Kind = nameof(ToolPartKind.Pin),
                Mark = mark,
                Why = nameof(RetirementReason.Wear),
                EndNote = "Threads gone.",
            },
            SamplePeople.Operator,
            CancellationToken.None
        );
}
