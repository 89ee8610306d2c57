using WeldTrace.Domain.Material;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Material.Components;

/// <summary>Where a component is, as a word with a shape.</summary>
public static class ComponentStanding
{
    public static (Mark Mark, string Word) Of(CutComponent component)
    {
        ArgumentNullException.ThrowIfNull(component);
        return component switch
        {
            { ScrappedBecause: not null } => (Mark.Failed, "scrapped"),
            { VesselSerial: { } serial } => (Mark.Passed, $"in {serial}"),
            _ => (Mark.Ready, "free"),
        };
    }
}
