using System.Globalization;
using WeldTrace.Domain.Tracing;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Genealogy;

/// <summary>A thing as it is drawn.</summary>
/// <param name="Id">Short identity within the drawing.</param>
/// <param name="Node">The thing.</param>
/// <param name="X">Left edge, in drawing units.</param>
/// <param name="Y">Upper edge.</param>
/// <param name="Lines">Identities of everything that it is connected with.</param>
/// <param name="Address">Its own page; where it has none, or one not for everybody, its line in the table.</param>
public sealed record DrawnNode(
    string Id,
    GenealogyNode Node,
    double X,
    double Y,
    IReadOnlyList<string> Lines,
    string Address
)
{
    public string RowId => RowOf(Id);

    /// <summary>What is read out when it is reached.</summary>
    public string Spoken =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{GenealogyGroups.Word(Node.Group)}: {Node.Label}{(Node.Detail.Length > 0 ? $", {Node.Detail}" : "")}. {Lines.Count} {(Lines.Count == 1 ? "line" : "lines")}."
        );

    internal static string RowOf(string id) => $"row-{id}";
}

/// <summary>A line of the drawing, between two things.</summary>
public sealed record DrawnLine(string Left, string Right, string Path);

/// <summary>A heading over things of one group.</summary>
public sealed record DrawnHeading(string Text, double X, double Y);

/// <summary>The genealogy of a vessel, laid out in columns from its material to what its work rests on.</summary>
public sealed class GenealogyChart
{
    public const double NodeWidth = 190;
    public const double NodeHeight = 40;
    private const double NodeGap = 8;
    private const double ColumnGap = 70;
    private const double HeadingHeight = 26;
    private const double Margin = 8;
    private const int LongestLabel = 27;
    private const int LongestDetail = 33;

    private GenealogyChart(
        IReadOnlyList<DrawnNode> nodes,
        IReadOnlyList<DrawnLine> lines,
        IReadOnlyList<DrawnHeading> headings
    )
    {
        (Nodes, Lines, Headings) = (nodes, lines, headings);
        Width = nodes.Max(n => n.X) + NodeWidth + ColumnGap;
        Height = nodes.Max(n => n.Y) + NodeHeight + Margin;
    }

    public IReadOnlyList<DrawnNode> Nodes { get; }

    public IReadOnlyList<DrawnLine> Lines { get; }

    public IReadOnlyList<DrawnHeading> Headings { get; }

    public double Width { get; }

    public double Height { get; }

    /// <param name="genealogy">What is drawn.</param>
    /// <param name="page">Address of the page that it is drawn on.</param>
    public static GenealogyChart Of(Domain.Tracing.Genealogy genealogy, string page)
    {
        ArgumentNullException.ThrowIfNull(genealogy);
        var ids = genealogy
            .Nodes.Select((n, i) => (n.Key, Id: FormattableString.Invariant($"n{i}")))
            .ToDictionary(p => p.Key, p => p.Id);
        List<DrawnNode> nodes = [];
        List<DrawnHeading> headings = [];
        var x = Margin;
        foreach (var column in genealogy.Nodes.GroupBy(n => n.Column).OrderBy(c => c.Key))
        {
            var y = Margin;
            foreach (var group in column.GroupBy(n => n.Group))
            {
                headings.Add(new(GenealogyGroups.Word(group.Key), x, y + (HeadingHeight / 2)));
                y += HeadingHeight;
                foreach (var node in group)
                {
                    var id = ids[node.Key];
                    var address = RecordLinks.Of(node.Record) ?? $"{page}#{DrawnNode.RowOf(id)}";
                    nodes.Add(new(id, node, x, y, LinesOf(genealogy, node, ids), address));
                    y += NodeHeight + NodeGap;
                }
            }

            x += NodeWidth + ColumnGap;
        }

        var places = nodes.ToDictionary(n => n.Node.Key);
        return new(
            nodes,
            [
                .. genealogy.Links.Select(l => new DrawnLine(
                    ids[l.Left],
                    ids[l.Right],
                    Path(places[l.Left], places[l.Right])
                )),
            ],
            headings
        );
    }

    /// <summary>A label as far as it fits, without the vessel that all this is about; the whole stands in the table.</summary>
    public static string Label(GenealogyNode node, string serial)
    {
        ArgumentNullException.ThrowIfNull(node);
        var start = $"{serial} ";
        var label = node.Label.StartsWith(start, StringComparison.Ordinal)
            ? node.Label[start.Length..]
            : node.Label;
        return Fit(label, LongestLabel);
    }

    /// <summary>A detail as far as it fits.</summary>
    public static string Detail(GenealogyNode node)
    {
        ArgumentNullException.ThrowIfNull(node);
        return Fit(node.Detail, LongestDetail);
    }

    // Whole words, so that what is seen stands in what is spoken.
    private static string Fit(string text, int most)
    {
        if (text.Length <= most)
        {
            return text;
        }

        var end = text.LastIndexOf(' ', most - 1);
        return $"{text[..(end > 0 ? end : most - 1)].TrimEnd(' ', ',')}…";
    }

    private static IReadOnlyList<string> LinesOf(
        Domain.Tracing.Genealogy genealogy,
        GenealogyNode node,
        Dictionary<string, string> ids
    ) => [.. genealogy.NeighboursOf(node.Key).Select(n => ids[n.Key])];

    private static string Path(DrawnNode left, DrawnNode right)
    {
        var (y1, y2) = (left.Y + (NodeHeight / 2), right.Y + (NodeHeight / 2));
        var x1 = left.X + NodeWidth;
        if (left.X == right.X)
        {
            var bend = x1 + (ColumnGap / 3);
            return FormattableString.Invariant($"M{x1} {y1}C{bend} {y1} {bend} {y2} {x1} {y2}");
        }

        var middle = (x1 + right.X) / 2;
        return FormattableString.Invariant(
            $"M{x1} {y1}C{middle} {y1} {middle} {y2} {right.X} {y2}"
        );
    }
}
