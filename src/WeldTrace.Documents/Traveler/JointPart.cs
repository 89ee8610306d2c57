using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>One joint: plan of its passes beside the figures of each pass.</summary>
internal static class JointPart
{
    private const int MostPassesBeside = 3;

    public static IEnumerable<Block> Blocks(JointSheet joint, DocumentStamp stamp)
    {
        yield return new Heading($"Joint {joint.Name}", 3);
        if (joint.Particulars.Count > 0)
        {
            yield return Grid.Of(joint.Particulars.Select(GridItem.Of), keepsWithNext: true);
        }

        var passes = joint.Passes.Chunk(MostPassesBeside).ToArray();
        var plan = new Figure(new PassDrawing(joint.Plan), PassLegend.Text, widest: 232);
        if (passes.Length == 0)
        {
            yield return plan;
        }
        else
        {
            yield return new SideBySide(
                plan,
                PassTable.Of(joint.Plan, passes[0], stamp.Units),
                0.5
            );
        }

        foreach (var more in passes.Skip(1))
        {
            yield return PassTable.Of(joint.Plan, more, stamp.Units);
        }

        foreach (var remark in joint.Remarks)
        {
            yield return new Paragraph(remark);
        }
    }
}
