using WeldTrace.Domain.Access;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Access;

public sealed class SharedTabletTests
{
    private static readonly string Hash = new('0', 64);

    [Fact]
    public void Register_ByAnotherRole_OrWithoutAName_IsRefused() =>
        Assert.Equal(
            ["role", "missing"],
            SharedTablet
                .Register(" ", Hash, SamplePeople.Engineer, SampleTime.Start)
                .Refusals.Select(r => r.Code)
        );

    [Fact]
    public void Withdraw_IsForOnce_WithAReason()
    {
        var tablet = Accept.Value(
            SharedTablet.Register(
                "Tablet at welding cell 2",
                Hash,
                SamplePeople.QualityManager,
                SampleTime.Start
            )
        );

        Assert.Equal(
            ["role", "missing"],
            tablet
                .Withdraw("", SamplePeople.Operator, SampleTime.Start)
                .Refusals.Select(r => r.Code)
        );
        Accept.All(tablet.Withdraw("it fell", SamplePeople.QualityManager, SampleTime.Start));
        Assert.Equal(SampleTime.Start, tablet.WithdrawnAt);
        Assert.Equal(
            "state",
            Assert
                .Single(
                    tablet.Withdraw("again", SamplePeople.QualityManager, SampleTime.Start).Refusals
                )
                .Code
        );
    }
}
