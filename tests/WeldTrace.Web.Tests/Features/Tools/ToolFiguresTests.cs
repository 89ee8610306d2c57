using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Tools;
using WeldTrace.Web.Features.Tools.Card;

namespace WeldTrace.Web.Tests.Features.Tools;

public sealed class ToolFiguresTests(PostgresServerFixture server)
{
    /// <summary>
    /// Passes of track radius 62 and 56 mm over 2π and 15°: 0.40579 and 0.36652 m by hand; a tool of 40 m fits them 98, 109 times, the vessel of
    /// 0.77231 m 51 times.
    /// </summary>
    [Fact]
    public async Task FindAsync_ReleasedDesign_CountsPassesAndVesselsLeft()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var design = SampleTools.Design();
        var tool = SampleTools.InService(design);
        await site.Database.AddAsync(
            design,
            tool,
            SampleProcedures.Released(design),
            SampleDesigns.Released()
        );

        var view = await new ToolReader(site.Database).FindAsync(tool.Id, CancellationToken.None);
        var figures = new ToolFigures(view!);

        Assert.Equal([98, 109, 51], figures.Next.Select(n => n.Usage.PassesLeft));
        Assert.Equal(
            [0.40579, 0.36652, 0.77231],
            figures.Next.Select(n => Math.Round(n.Usage.NextPass.Metres, 5))
        );
        Assert.All(figures.Next, n => Assert.Null(n.Survival));
    }

    [Fact]
    public void Fit_OtherEndsAreCensored_AndTheToolIsConditional()
    {
        var design = SampleTools.Design();
        var tool = SampleTools.InService(design);
        tool.Charge(
            new ToolUse(
                Guid.CreateVersion7(SampleTime.Start),
                "NR4-0001",
                Length.FromMetres(20),
                ChargeBasis.ProcessLog,
                SampleTime.Start,
                "J1"
            ),
            SamplePeople.Operator
        );
        ToolLife[] family =
        [
            .. tool.Lives,
            new("T-1", Length.FromMetres(25), RetirementReason.Wear),
            new("T-2", Length.FromMetres(35), RetirementReason.Wear),
            new("T-3", Length.FromMetres(40), RetirementReason.Limit),
            new("T-4", Length.FromMetres(15), RetirementReason.Breakage),
            new("T-5", Length.Zero, null),
        ];
        var view = new ToolView(
            tool,
            design,
            family,
            [new PlannedPass(Guid.Empty, "NR-4 rev A", "J1", 1, Length.FromMetres(0.4))],
            new HashSet<Guid>()
        );

        var figures = new ToolFigures(view);

        Assert.Equal(RetirementReason.Wear, figures.Mode);
        Assert.Equal((5, 2), (figures.Fit.Value.Count, figures.Fit.Value.Failures));
        var next = figures.Next[0];
        Assert.Equal(
            figures.Fit.Value.Survival.Conditional(Length.FromMetres(20), Length.FromMetres(0.4)),
            next.Survival!.Value,
            12
        );
        Assert.InRange(next.SurvivalBound!.Value, 0, next.Survival.Value);
        Assert.True(new ToolFigures(view, RetirementReason.Breakage).Fit.IsRefused);
    }

    [Fact]
    public void Card_ShowsWhatThePageShows()
    {
        var design = SampleTools.Design();
        var tool = SampleTools.InService(design);
        Accept.All(
            tool.Inspect(
                new InspectionEntry(
                    ToolInspectionKind.Wear,
                    true,
                    "",
                    new PinReading(
                        new("2.95", "mm"),
                        new("4.95", "mm"),
                        SampleInstruments.Caliper(),
                        "CAL-7"
                    ),
                    null
                ),
                design,
                SampleTime.Day,
                SamplePeople.Operator,
                SampleTime.Start
            )
        );
        var view = new ToolView(tool, design, tool.Lives, [], new HashSet<Guid>());

        var card = ToolCardMapping.Map(
            view,
            new WeldTrace.Documents.DocumentStamp
            {
                SiteName = "Test works",
                PrintedBy = "Ada Brandt",
                PrintedAt = SampleTime.Start,
                TimeZone = TimeZoneInfo.Utc,
                Units = UnitSystem.Metric,
            },
            "https://example.org/tools/1"
        );

        Assert.Equal(2, card.Inspections.Count);
        Assert.Equal("2.95 mm", card.Inspections[1].Measured[0].Value);
        Assert.NotNull(card.Wear);
        Assert.Null(card.Failures);
        Assert.Equal(10, card.Life.InspectionDueAt!.Value.Metres, 9);
    }
}
