using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Tests.Layout;

/// <summary>Empty room of a wanted height.</summary>
internal sealed class Gap(double height) : Block
{
    public override double SpaceAfter => 0;

    public override double Height(double width) => height;

    public override void Draw(Canvas canvas, Area area) { }
}
