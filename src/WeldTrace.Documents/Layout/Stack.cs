namespace WeldTrace.Documents.Layout;

/// <summary>Blocks below each other that stay together.</summary>
internal sealed class Stack(IReadOnlyList<Block> blocks) : Block
{
    public override double Height(double width)
    {
        var height = 0.0;
        for (var i = 0; i < blocks.Count; i++)
        {
            height += blocks[i].Height(width) + SpaceBelow(i);
        }

        return height;
    }

    public override void Draw(Canvas canvas, Area area)
    {
        var y = area.Y;
        for (var i = 0; i < blocks.Count; i++)
        {
            var height = blocks[i].Height(area.Width);
            blocks[i].Draw(canvas, area with { Y = y, Height = height });
            y += height + SpaceBelow(i);
        }
    }

    public override void Place(Flow flow)
    {
        if (Height(Flow.Width) <= PageGeometry.TextHeight)
        {
            base.Place(flow);
        }
        else
        {
            flow.Place(blocks);
        }
    }

    private double SpaceBelow(int i) =>
        i == blocks.Count - 1 ? 0 : Math.Max(blocks[i].SpaceAfter, blocks[i + 1].SpaceBefore);
}
