using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

internal static class JointMapping
{
    /// <summary>The joint with the set points of the procedure it was welded by, else of the released one; null when there is neither.</summary>
    public static JointSheet? Map(TravelerSource source, Joint joint)
    {
        var usedId = source
            .History.Runs.LastOrDefault(r => r.JointCode == joint.Code && r.Repair is null)
            ?.ProcedureRevisionId;
        var procedure =
            usedId is { } id && source.Procedures.TryGetValue(id, out var used)
                ? used
                : source.Procedures.Values.FirstOrDefault(p => p.Number == joint.ProcedureNumber);
        var tool = procedure is null
            ? null
            : source.ToolDesigns.GetValueOrDefault(procedure.Content.ToolDesignId);
        return procedure is null || tool is null
            ? null
            : PrintedJoints.Of(
                joint,
                procedure,
                tool,
                $"{joint.Code}: {joint.Name}",
                source.Site.Units
            );
    }
}
