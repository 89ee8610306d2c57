using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Trace.Histories;

namespace WeldTrace.Web.Tests.Features.Trace.Histories;

/// <summary>What the line of orders takes, and what is left of it after the program ended and started again.</summary>
public sealed class OrderLineTests : IDisposable
{
    private static readonly Uri Site = new("https://records.example/");

    private readonly TestFolder _folder = new();
    private readonly FakeTimeProvider _clock = new(SampleTime.Start);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Restart_WhileAnOrderWasMade_BeginsItAnewAndDeletesItsDrafts()
    {
        var before = Open();
        var order = Placed(before);
        before.Begin(CancellationToken.None);
        before.Report(order.Id, 1);
        Write(order, "histories.zip.part");
        Write(order, "histories.zip");

        var after = Open().Find(order.Id)!;

        Assert.Equal(OrderState.Waiting, after.State);
        Assert.Equal(0, after.Done);
        Assert.Equal(["order.json"], FilesOf(order));
    }

    [Fact]
    public void OrderThatStopsTheProgramEachTime_IsGivenUpWithAReason()
    {
        var order = Placed(Open());
        for (var i = 0; i < HistorySettings.MostAttempts; i++)
        {
            Assert.NotNull(Open().Begin(CancellationToken.None));
        }

        var after = Open();

        Assert.Equal(OrderState.Failed, after.Find(order.Id)!.State);
        Assert.Contains("Order fewer vessels", after.Find(order.Id)!.Fault);
        Assert.Null(after.Begin(CancellationToken.None));
    }

    [Fact]
    public void OrderlyEnd_PutsTheOrderBack_AndDoesNotCount()
    {
        var order = Placed(Open());
        for (var i = 0; i < HistorySettings.MostAttempts + 1; i++)
        {
            var orders = Open();
            Assert.NotNull(orders.Begin(CancellationToken.None));
            orders.PutBack(order.Id);
        }

        Assert.Equal(OrderState.Waiting, Open().Find(order.Id)!.State);
    }

    [Fact]
    public void ReadyFile_IsOfferedAfterARestart_ButOnlyAsItWas()
    {
        var order = Ready(Open());

        Assert.Equal(OrderState.Ready, Open().Find(order.Id)!.State);

        File.AppendAllText(
            Open().Find(order.Id) is { } o ? PathOf(o, "histories.zip") : "",
            "more"
        );
        Assert.Equal(OrderState.Failed, Open().Find(order.Id)!.State);
    }

    [Fact]
    public void WhatBelongsToNoOrder_IsDeletedAtTheStart()
    {
        var order = Placed(Open());
        var stray = Path.Combine(Histories, "0123456789abcdef0123456789abcdef");
        Directory.CreateDirectory(stray);
        File.WriteAllText(Path.Combine(stray, "order.json"), "{ half an ord");

        Assert.NotNull(Open().Find(order.Id));
        Assert.False(Directory.Exists(stray));
    }

    [Fact]
    public void Line_TakesThreeOrdersOfOnePerson_AndTenOfAll()
    {
        var orders = Open();
        for (var i = 0; i < HistorySettings.MostOfOnePerson; i++)
        {
            Placed(orders);
        }

        Assert.Equal("own-line", Refused(orders, SamplePeople.Auditor));
        for (var i = HistorySettings.MostOfOnePerson; i < HistorySettings.LongestLine; i++)
        {
            Placed(orders, SamplePeople.Entered($"Person {i}", Role.Auditor).AsActor());
        }

        Assert.Equal("line", Refused(orders, SamplePeople.QualityManager));
    }

    [Fact]
    public void Line_IsMadeInTheOrderOfAsking()
    {
        var orders = Open();
        var (first, second) = (Placed(orders), Placed(orders));

        Assert.Equal(1, orders.Before(second));
        Assert.Equal(first.Id, orders.Begin(CancellationToken.None)!.Value.Order.Id);
        orders.GiveUp(first.Id, "It was not to be.");
        Assert.Equal(second.Id, orders.Begin(CancellationToken.None)!.Value.Order.Id);
    }

    [Fact]
    public void NoVessel_TooMany_AndAFullDisk_AreRefused()
    {
        var full = Open(leaveFree: "900000000000");
        var many = Enumerable.Range(1, HistorySettings.MostVessels + 1).Select(i => $"V-{i}");

        Assert.Equal("none", Code(Open().Place("x", [], Site, SamplePeople.Auditor)));
        Assert.Equal("too-many", Code(Open().Place("x", [.. many], Site, SamplePeople.Auditor)));
        Assert.Equal("no-room", Refused(full, SamplePeople.Auditor));
        Assert.Empty(full.SeenBy(SamplePeople.Auditor));
    }

    [Fact]
    public void Time_DeletesFirstTheFileAndThenTheOrder()
    {
        var orders = Open();
        var order = Ready(orders);

        _clock.Advance(HistorySettings.FileKeptFor - TimeSpan.FromMinutes(1));
        orders.DeleteOld();
        Assert.Equal(OrderState.Ready, orders.Find(order.Id)!.State);
        _clock.Advance(TimeSpan.FromMinutes(2));
        orders.DeleteOld();
        Assert.Equal(OrderState.Deleted, orders.Find(order.Id)!.State);
        Assert.Equal(["order.json"], FilesOf(order));
        _clock.Advance(HistorySettings.OrderKeptFor + TimeSpan.FromMinutes(1));
        orders.DeleteOld();
        Assert.Null(orders.Find(order.Id));
        Assert.Empty(Directory.EnumerateDirectories(Histories));
    }

    [Fact]
    public void Orders_AreSeenByTheirPersonQualityAndAdministrator()
    {
        var orders = Open();
        Placed(orders);

        Assert.Single(orders.SeenBy(SamplePeople.Auditor));
        Assert.Single(orders.SeenBy(SamplePeople.QualityManager));
        Assert.Empty(orders.SeenBy(SamplePeople.Engineer));
        Assert.Empty(orders.SeenBy(SamplePeople.Inspector));
    }

    private string Histories => Path.Combine(_folder.Path, "histories");

    private HistoryOrders Open(string leaveFree = "1")
    {
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection([
                new("Database:Folder", _folder.Path),
                new("Histories:LeaveFreeMegabytes", leaveFree),
            ])
            .Build();
        var settings = new HistorySettings(configuration, new DatabaseSettings(configuration));
        return new(new OrderFiles(settings, NullLogger<OrderFiles>.Instance), _clock);
    }

    private HistoryOrder Placed(HistoryOrders orders, Actor? actor = null)
    {
        _clock.Advance(TimeSpan.FromSeconds(1));
        return Accept.Value(
            orders.Place("A lot", ["V-1", "V-2"], Site, actor ?? SamplePeople.Auditor)
        );
    }

    private HistoryOrder Ready(HistoryOrders orders)
    {
        var order = Placed(orders);
        orders.Begin(CancellationToken.None);
        Write(order, "histories.zip");
        Assert.True(orders.Offer(order.Id, 4, new string('0', 64)));
        return order;
    }

    private static string Refused(HistoryOrders orders, Actor actor) =>
        Code(orders.Place("A lot", ["V-1"], Site, actor));

    private static string Code(Outcome<HistoryOrder> outcome) =>
        Assert.Single(outcome.Refusals).Code;

    private void Write(HistoryOrder order, string name) =>
        File.WriteAllText(PathOf(order, name), "PK..");

    private string PathOf(HistoryOrder order, string name) =>
        Path.Combine(Histories, order.Id.ToString("N"), name);

    private IEnumerable<string?> FilesOf(HistoryOrder order) =>
        Directory.EnumerateFiles(PathOf(order, "")).Select(Path.GetFileName);
}
