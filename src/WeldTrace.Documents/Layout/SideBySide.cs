namespace WeldTrace.Documents.Layout;

/// <summary>Two blocks beside each other; below each other where they do not fit on one page.</summary>
internal sealed class SideBySide(Block left, Block right, double leftShare) : Block
{
    private const double Gutter = 18;

    public override double SpaceAfter => 8;

    public override double StartHeight(double width) =>
        FitsOnePage(width) ? Height(width) : left.StartHeight(width);

    public override double Height(double width) =>
        Math.Max(left.Height(LeftWidth(width)), right.Height(RightWidth(width)));

    public override void Draw(Canvas canvas, Area area)
    {
        var leftWidth = LeftWidth(area.Width);
        var rightWidth = RightWidth(area.Width);
        left.Draw(canvas, area with { Width = leftWidth });
        right.Draw(canvas, area with { X = area.Right - rightWidth, Width = rightWidth });
    }

    public override void Place(Flow flow)
    {
        if (FitsOnePage(Flow.Width))
        {
            base.Place(flow);
        }
        else
        {
            flow.Place([left, right]);
        }
    }

    private bool FitsOnePage(double width) => Height(width) <= PageGeometry.TextHeight;

    private static double LeftWidthOf(double width, double share) => (width - Gutter) * share;

    private double LeftWidth(double width) => LeftWidthOf(width, leftShare);

    private double RightWidth(double width) => width - Gutter - LeftWidth(width);
}
