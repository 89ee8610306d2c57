using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Reading;

/// <summary>Joints of drawings that are welded by the same passes, so that these are laid out once for all of them.</summary>
public sealed record SamePasses(IReadOnlyList<DrawnJoint> Joints)
{
    /// <summary>The one that stands for all.</summary>
    public DrawnJoint First => Joints[0];

    /// <summary>In the order of the first joint of each.</summary>
    public static IReadOnlyList<SamePasses> Of(IReadOnlyList<DrawnJoint> drawn)
    {
        ArgumentNullException.ThrowIfNull(drawn);
        List<List<DrawnJoint>> groups = [];
        foreach (var joint in drawn)
        {
            if (groups.Find(g => AreSame(g[0].Joint, joint.Joint)) is { } group)
            {
                group.Add(joint);
            }
            else
            {
                groups.Add([joint]);
            }
        }

        return [.. groups.Select(g => new SamePasses(g))];
    }

    private static bool AreSame(Joint one, Joint other) =>
        one.JointType == other.JointType
        && one.Thickness == other.Thickness
        && one.Passes.SequenceEqual(other.Passes);
}
