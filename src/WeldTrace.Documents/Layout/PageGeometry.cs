namespace WeldTrace.Documents.Layout;

/// <summary>An A4 page in points, 1 pt = 1/72 in, with the area of the text.</summary>
internal static class PageGeometry
{
    public const double Width = 595.28;
    public const double Height = 841.89;
    public const double Left = 54;
    public const double Right = Width - 48;
    public const double Top = 46;
    public const double Bottom = Height - 68;
    public const double Footer = Height - 50;
    public const double TextWidth = Right - Left;
    public const double TextHeight = Bottom - Top;
}

/// <summary>A rectangle on a page; y grows downwards.</summary>
internal readonly record struct Area(double X, double Y, double Width, double Height)
{
    public double Right => X + Width;

    public double Bottom => Y + Height;
}
