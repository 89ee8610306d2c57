using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Tracing;

/// <summary>A thing or a person that had a part in a vessel.</summary>
/// <param name="Key">Identity within the genealogy.</param>
/// <param name="Group">What it is to the vessel.</param>
/// <param name="Record">Record that tells of it; null for a part that has none.</param>
/// <param name="Label">How a person names it.</param>
/// <param name="Detail">A few words more; may be empty.</param>
public sealed record GenealogyNode(
    string Key,
    GenealogyGroup Group,
    RecordName? Record,
    string Label,
    string Detail
)
{
    /// <summary>Column in which it stands, from 0.</summary>
    public int Column => GenealogyGroups.ColumnOf(Group);
}

/// <summary>That two things belong together.</summary>
/// <param name="Left">Key of the one in the column further left.</param>
/// <param name="Right">Key of the other.</param>
/// <param name="Words">What the left has to do with the right, each once.</param>
public sealed record GenealogyLink(string Left, string Right, IReadOnlyList<string> Words);

/// <summary>What a weld or a test could rely on, on its own day: the certificate of whoever did it, or the calibration of an instrument.</summary>
/// <param name="Work">What was done.</param>
/// <param name="Day">Day at the site on which it was done.</param>
/// <param name="Subject">Person or instrument.</param>
/// <param name="Proof">Certificate or calibration; null when none is on record for that day.</param>
/// <param name="Holds">Whether it held on that day.</param>
/// <param name="Sentence">How it stood, in one sentence.</param>
public sealed record GenealogyProof(
    GenealogyNode Work,
    DateOnly Day,
    GenealogyNode Subject,
    GenealogyNode? Proof,
    bool Holds,
    string Sentence
);

/// <summary>Everything that made one vessel, and how it hangs together.</summary>
public sealed class Genealogy
{
    private readonly Dictionary<string, GenealogyNode> _byKey;
    private readonly ILookup<string, string> _neighbours;

    internal Genealogy(
        IReadOnlyList<GenealogyNode> nodes,
        IReadOnlyList<GenealogyLink> links,
        IReadOnlyList<GenealogyProof> proofs,
        IReadOnlyList<Signature> signatures
    )
    {
        (Nodes, Links, Proofs, Signatures) = (nodes, links, proofs, signatures);
        _byKey = nodes.ToDictionary(n => n.Key);
        _neighbours = links
            .SelectMany(l => new[] { (From: l.Left, To: l.Right), (From: l.Right, To: l.Left) })
            .ToLookup(p => p.From, p => p.To);
    }

    /// <summary>Everything that had a part, by group and in the order of time or name.</summary>
    public IReadOnlyList<GenealogyNode> Nodes { get; }

    /// <summary>What belongs together; each pair once.</summary>
    public IReadOnlyList<GenealogyLink> Links { get; }

    /// <summary>Certificates and calibrations as they stood when something was done, in the order of the work.</summary>
    public IReadOnlyList<GenealogyProof> Proofs { get; }

    /// <summary>Signatures under the records, oldest first.</summary>
    public IReadOnlyList<Signature> Signatures { get; }

    /// <summary>Puts a genealogy together from the records behind a vessel.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="records">Its records and what they rest on; what is missing among them is named as the others name it.</param>
    /// <param name="dayOf">The day at the site on which an instant falls.</param>
    public static Genealogy Of(
        Vessel vessel,
        IReadOnlyCollection<Record> records,
        Func<DateTimeOffset, DateOnly> dayOf
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(dayOf);
        return new GenealogyBuilder(vessel, records, dayOf).Build();
    }

    /// <summary>What stands in a group; empty when nothing does.</summary>
    public IReadOnlyList<GenealogyNode> In(GenealogyGroup group) =>
        [.. Nodes.Where(n => n.Group == group)];

    /// <summary>What belongs to a thing directly, in the order of the nodes.</summary>
    /// <param name="key">Key of the thing.</param>
    public IReadOnlyList<GenealogyNode> NeighboursOf(string key) =>
        [
            .. _neighbours[key]
                .Select(k => _byKey[k])
                .OrderBy(n => n.Group)
                .ThenBy(n => n.Label, StringComparer.Ordinal),
        ];

    /// <summary>Everything that a thing is connected with, near or far, itself included.</summary>
    /// <param name="key">Key of the thing.</param>
    public IReadOnlySet<string> ConnectedWith(string key)
    {
        HashSet<string> seen = [key];
        Queue<string> next = new([key]);
        while (next.TryDequeue(out var here))
        {
            foreach (var neighbour in _neighbours[here].Where(seen.Add))
            {
                next.Enqueue(neighbour);
            }
        }

        return seen;
    }
}
