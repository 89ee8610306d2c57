using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.States;

public sealed class VesselStateTests
{
    private const string Table = """
                  begin   pass    fail    ship     report  scrap
        Planned   InWork  InWork  InWork  !state   OnHold  Scrapped
        InWork    InWork  InWork  InWork  !state   OnHold  Scrapped
        OnHold    OnHold  OnHold  OnHold  !state   =OnHold Scrapped
        Accepted  !F1     !F1     !F1     Shipped  OnHold  Scrapped
        Shipped   !state  !state  !state  !state   !state  !state
        Scrapped  !state  !state  !state  !state   !state  !state
        """;

    /// <summary>No act leads to <see cref="VesselState.Expended"/> yet: destructive samples of a lot are not recorded.</summary>
    public static TheoryData<VesselState, string, string> Cells =>
        StateTable.Read(Table, VesselState.Expended);

    [Theory]
    [MemberData(nameof(Cells))]
    public void Act_InState_FollowsTheTable(VesselState state, string act, string expected)
    {
        var shop = In(state);
        var vessel = shop.Vessel;
        var watch = new RecordWatch(vessel);

        var refusals = Do(shop, act);

        watch.AssertOutcome(expected, refusals, vessel.State);
    }

    [Fact]
    public void Ship_ByAnOperator_IsRefused()
    {
        var vessel = In(VesselState.Accepted).Vessel;
        var watch = new RecordWatch(vessel);

        watch.AssertRefused(
            "role",
            vessel.Ship(SampleShipment.Lisbon, SamplePeople.Operator, SampleTime.Start).Refusals
        );
    }

    /// <summary>Scrap is for ever: a second finding that is settled afterwards brings nothing back.</summary>
    [Fact]
    public void Scrapped_StaysScrapped_WhateverIsDecidedOnOtherFindings()
    {
        var shop = new SampleShop();
        shop.Interrupted();
        var other = shop.Report();
        Accept.All(shop.Dispose(other, DispositionKind.Scrap), shop.Close(other));

        Accept.All(
            shop.Dispose(shop.Findings[0], DispositionKind.Scrap),
            shop.Close(shop.Findings[0])
        );

        Assert.Equal(VesselState.Scrapped, shop.Vessel.State);
    }

    private static IReadOnlyList<Refusal> Do(SampleShop shop, string act)
    {
        var (vessel, at) = (shop.Vessel, shop.Now);
        var next = vessel.NextStep?.Sequence ?? 60;
        return act switch
        {
            "begin" => vessel.BeginStep(next, SamplePeople.Operator, at).Refusals,
            "pass" => vessel.PassStep(next, SamplePeople.Operator, at).Refusals,
            "fail" => vessel.FailStep(next, SamplePeople.Operator, at).Refusals,
            "ship" => vessel.Ship(SampleShipment.Lisbon, SamplePeople.QualityManager, at).Refusals,
            "report" => Report(shop).Refusals,
            "scrap" => Scrap(shop),
            _ => throw new ArgumentOutOfRangeException(nameof(act), act, "Unknown act."),
        };
    }

    private static Outcome<Finding> Report(SampleShop shop) =>
        Finding.Report(
            Guid.CreateVersion7(SampleTime.Start),
            shop.Vessel,
            shop.Design,
            10,
            "Scratch.",
            null,
            SamplePeople.Inspector,
            SampleTime.Start
        );

    private static IReadOnlyList<Refusal> Scrap(SampleShop shop)
    {
        var reported = Report(shop);
        return reported.Value is { } finding
            ? shop.Dispose(finding, DispositionKind.Scrap).Refusals
            : reported.Refusals;
    }

    private static SampleShop In(VesselState state)
    {
        var shop = new SampleShop();
        if (state is VesselState.InWork or VesselState.OnHold)
        {
            shop.Reach(30);
        }

        if (state is VesselState.Accepted or VesselState.Shipped)
        {
            shop.Reach(70);
        }

        if (state == VesselState.OnHold)
        {
            shop.Report(10);
        }

        if (state == VesselState.Shipped)
        {
            Accept.All(
                shop.Vessel.Ship(SampleShipment.Lisbon, SamplePeople.QualityManager, shop.Now)
            );
        }

        if (state == VesselState.Scrapped)
        {
            Accept.All(shop.Dispose(shop.Report(), DispositionKind.Scrap));
        }

        Assert.Equal(state, shop.Vessel.State);
        return shop;
    }
}
