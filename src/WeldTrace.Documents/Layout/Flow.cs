namespace WeldTrace.Documents.Layout;

/// <summary>Fills pages from top to bottom; what is painted runs later, when the number of pages is known.</summary>
internal sealed class Flow
{
    private readonly List<List<Action<Canvas>>> _pages =
    [
        [],
    ];
    private double _y = PageGeometry.Top;
    private readonly List<(Heading Heading, int Page)> _headings = [];
    private double _pendingSpace;

    /// <summary>The headings in their order, each with its page from 1.</summary>
    public IReadOnlyList<(Heading Heading, int Page)> Headings => _headings;

    public IReadOnlyList<IReadOnlyList<Action<Canvas>>> Pages => _pages;

    public const double Width = PageGeometry.TextWidth;

    private bool AtTop => _y <= PageGeometry.Top;

    public double Remaining => PageGeometry.Bottom - _y - _pendingSpace;

    public void Paint(Action<Canvas> paint) => _pages[^1].Add(paint);

    /// <summary>Begins a new page when the room does not suffice, unless the page is still empty.</summary>
    public void Require(double height)
    {
        if (!Fits(height) && !AtTop)
        {
            BeginPage();
        }
    }

    public bool Fits(double height) => height <= Remaining + 0.01;

    public void BeginPage()
    {
        _pages.Add([]);
        _y = PageGeometry.Top;
        _pendingSpace = 0;
    }

    public Area Take(double height)
    {
        _y += AtTop ? 0 : _pendingSpace;
        _pendingSpace = 0;
        var area = new Area(PageGeometry.Left, _y, Width, height);
        _y += height;
        return area;
    }

    public void Space(double height) => _pendingSpace = Math.Max(_pendingSpace, height);

    public void Place(IReadOnlyList<Block> blocks)
    {
        for (var i = 0; i < blocks.Count; i++)
        {
            Space(blocks[i].SpaceBefore);
            Require(HeightToBegin(blocks, i));
            blocks[i].Place(this);
            if (blocks[i] is Heading heading)
            {
                _headings.Add((heading, _pages.Count));
            }

            Space(blocks[i].SpaceAfter);
        }
    }

    private static double HeightToBegin(IReadOnlyList<Block> blocks, int first)
    {
        var height = 0.0;
        var i = first;
        while (i < blocks.Count - 1 && blocks[i].KeepsWithNext && height < PageGeometry.TextHeight)
        {
            height += blocks[i].Height(Width);
            height += Math.Max(blocks[i].SpaceAfter, blocks[i + 1].SpaceBefore);
            i++;
        }

        return Math.Min(height + blocks[i].StartHeight(Width), PageGeometry.TextHeight);
    }
}
