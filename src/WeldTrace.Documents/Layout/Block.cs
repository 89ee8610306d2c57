namespace WeldTrace.Documents.Layout;

/// <summary>A piece of a document that knows its height in a column and can draw itself.</summary>
internal abstract class Block
{
    public virtual double SpaceBefore => 0;

    public virtual double SpaceAfter => 6;

    /// <summary>Whether a page must not end between this block and the next.</summary>
    public virtual bool KeepsWithNext => false;

    public abstract double Height(double width);

    /// <summary>Room without which the block does not begin on a page.</summary>
    public virtual double StartHeight(double width) => Height(width);

    /// <summary>Draws the whole block into an area of its own height.</summary>
    public abstract void Draw(Canvas canvas, Area area);

    /// <summary>Puts the block on the pages; one that can be divided overrides this.</summary>
    public virtual void Place(Flow flow)
    {
        var height = Height(Flow.Width);
        flow.Require(height);
        var area = flow.Take(height);
        flow.Paint(canvas => Draw(canvas, area));
    }
}
