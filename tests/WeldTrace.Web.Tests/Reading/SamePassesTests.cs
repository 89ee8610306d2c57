using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Tests.Reading;

public sealed class SamePassesTests
{
    [Fact]
    public void Of_JointsWithEqualPasses_AreLaidOutOnce_AndAnotherApart()
    {
        var design = SampleDesigns.Released();
        var joint = design.Content.Joints[0];
        var other = joint with
        {
            Code = "J9",
            Passes = [.. joint.Passes.Select(p => p with { TrackRadius = p.TrackRadius * 1.1 })],
        };

        var same = SamePasses.Of([
            new DrawnJoint(design, joint),
            new DrawnJoint(design, other),
            new DrawnJoint(design, joint with { Code = "J2" }),
        ]);

        Assert.Equal(2, same.Count);
        Assert.Equal([joint.Code, "J2"], same[0].Joints.Select(j => j.Joint.Code));
        Assert.Equal("J9", same[1].First.Joint.Code);
    }
}
