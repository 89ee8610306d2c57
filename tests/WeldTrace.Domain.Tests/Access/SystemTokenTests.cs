using WeldTrace.Domain.Access;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Access;

public sealed class SystemTokenTests
{
    private static readonly Actor Administrator = new(
        Guid.Parse("00000000-0000-0000-0000-0000000000ad"),
        "Ines Vidal",
        [Role.Administrator]
    );

    [Fact]
    public void Give_HoldsUntilItsEnd_OrUntilItIsWithdrawn()
    {
        var token = Accept.Value(Give());

        Assert.True(token.HoldsAt(SampleTime.Start.AddDays(30).AddTicks(-1)));
        Assert.False(token.HoldsAt(SampleTime.Start.AddDays(30)));
        Accept.All(token.Withdraw("replaced", Administrator, SampleTime.Start));
        Assert.False(token.HoldsAt(SampleTime.Start));
        Assert.Equal(
            "state",
            Assert.Single(token.Withdraw("again", Administrator, SampleTime.Start).Refusals).Code
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(SystemToken.MostDays + 1)]
    public void Give_WithoutAnEndInReach_Refused(int days) =>
        Assert.Equal("days", Assert.Single(Give(days: days).Refusals).Code);

    [Fact]
    public void Give_ByAnotherRole_OrToNoSystem_Refused() =>
        Assert.Equal(
            ["role", "missing"],
            Give(" ", actor: SamplePeople.Engineer).Refusals.Select(r => r.Code)
        );

    /// <summary>A system at the bench may record readings; what only reads may do nothing.</summary>
    [Fact]
    public void AsActor_HasTheRoleOfItsScopeOnly()
    {
        var bench = Accept.Value(Give()).AsActor();
        var office = Accept.Value(Give(scope: TokenScope.ReadHistories)).AsActor();

        Assert.Equal("Bench computer (system)", bench.PrintedName);
        Assert.Equal([Role.Inspector], bench.Roles);
        Assert.Empty(office.Roles);
    }

    private static Outcome<SystemToken> Give(
        string name = "Bench computer",
        TokenScope scope = TokenScope.PushBenchReadings,
        int days = 30,
        Actor? actor = null
    ) =>
        SystemToken.Give(
            name,
            scope,
            days,
            new string('a', 64),
            actor ?? Administrator,
            SampleTime.Start
        );
}
