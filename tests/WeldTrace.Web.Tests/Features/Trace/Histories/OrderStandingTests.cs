using Bunit;
using WeldTrace.Domain.Sites;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Trace.Histories;
using WeldTrace.Web.Tests.Components;

namespace WeldTrace.Web.Tests.Features.Trace.Histories;

/// <summary>What the page of an order shows of each state.</summary>
public sealed class OrderStandingTests : ComponentTest
{
    private static readonly HistoryOrder Order = new()
    {
        Id = Guid.CreateVersion7(SampleTime.Start),
        Title = "Production lot PL-26-03",
        Serials = ["V-1", "V-2", "V-3"],
        OrderedById = SamplePeople.Auditor.PersonId,
        OrderedBy = SamplePeople.Auditor.PrintedName,
        OrderedAt = SampleTime.Start,
        Site = new Uri("https://records.example/"),
    };

    [Fact]
    public void Made_TellsHowFarItIs_AndIsWatched()
    {
        var page = Show(Order with { State = OrderState.Making, Done = 2 });

        Assert.Equal("2", page.Find("progress").GetAttribute("value"));
        Assert.Equal("3", page.Find("progress").GetAttribute("max"));
        Assert.Equal("2 of 3 histories made.", page.Find("[role=status]").TextContent);
        Assert.Equal(
            Routes.HistoryState(Order.Id),
            page.Find("[data-watch]").GetAttribute("data-watch")
        );
        Assert.Equal("being made", page.Find("[data-watch]").GetAttribute("data-watch-state"));
        Assert.Empty(page.FindAll("a[download]"));
    }

    [Fact]
    public void Waiting_TellsHowManyAreBefore() =>
        Assert.Contains("2 orders are made before this one", Show(Order, before: 2).Markup);

    [Fact]
    public void Ready_OffersTheFile_WithItsHashAndItsEnd()
    {
        var page = Show(
            Order.End(OrderState.Ready, SampleTime.Start) with
            {
                Bytes = 2_345_678,
                Sha256 = new string('a', 64),
            }
        );

        var link = page.Find("a[download]");
        Assert.Equal(Routes.HistoryFile(Order.Id), link.GetAttribute("href"));
        Assert.Contains("2.3 MB", link.TextContent, StringComparison.Ordinal);
        Assert.Contains("2,345,678 bytes", page.Markup, StringComparison.Ordinal);
        Assert.Contains(new string('a', 64), page.Markup, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("progress"));
    }

    [Fact]
    public void NotMade_TellsWhy()
    {
        var page = Show(Order.End(OrderState.Failed, SampleTime.Start) with { Fault = "No room." });

        Assert.Contains("No room.", page.Find(".notice").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("a[download]"));
    }

    [Fact]
    public void EachState_HasAWordOfItsOwn()
    {
        var words = Enum.GetValues<OrderState>().Select(s => (Order with { State = s }).StateWord);

        Assert.Equal(words.Count(), words.Distinct().Count());
    }

    private IRenderedComponent<OrderStanding> Show(HistoryOrder order, int before = 0) =>
        Render<OrderStanding>(p =>
            p.Add(c => c.Order, order)
                .Add(c => c.Before, before)
                .Add(
                    c => c.Site,
                    Accept.Value(
                        Site.SetUp(
                            "Test works",
                            "Etc/UTC",
                            UnitSystem.Metric,
                            false,
                            SamplePeople.Engineer,
                            SampleTime.Start
                        )
                    )
                )
        );
}
