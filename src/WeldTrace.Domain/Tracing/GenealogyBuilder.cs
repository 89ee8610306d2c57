using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Tracing;

/// <summary>Puts a genealogy together, from the material over the vessel to what its work rests on.</summary>
internal sealed partial class GenealogyBuilder(
    Vessel vessel,
    IReadOnlyCollection<Record> records,
    Func<DateTimeOffset, DateOnly> dayOf
)
{
    private readonly Dictionary<Guid, Record> _records = records
        .DistinctBy(r => r.Id)
        .ToDictionary(r => r.Id);
    private readonly Dictionary<string, GenealogyNode> _nodes = [];
    private readonly Dictionary<(string Left, string Right), List<string>> _links = [];
    private readonly List<GenealogyProof> _proofs = [];

    public Genealogy Build()
    {
        AddVessel();
        AddMaterial();
        AddWork();
        AddDecisions();
        AddSignalReviews();
        AddQualifications();
        var signatures = All<Signature>()
            .Where(s => _nodes.ContainsKey(Key(s.SignedKind, s.SignedId)))
            .OrderBy(s => s.At)
            .ToList();
        foreach (var signature in signatures)
        {
            Link(
                _nodes[Key(signature.SignedKind, signature.SignedId)],
                Person(signature.PersonId, signature.PrintedName),
                $"signed: {signature.Meaning}"
            );
        }

        return new Genealogy(
            [.. _nodes.Values.OrderBy(n => n.Group)],
            [.. _links.Select(l => new GenealogyLink(l.Key.Left, l.Key.Right, l.Value))],
            _proofs,
            signatures
        );
    }

    private void AddVessel()
    {
        var node = Add(GenealogyGroup.Vessel, vessel, Vessel.StateWord(vessel.State));
        var design = Add(
            GenealogyGroup.Vessel,
            new RecordName("vessel-design", vessel.DesignId, vessel.DesignLabel),
            "design"
        );
        Link(node, design, "made to");
        if (vessel.LotId is { } lot)
        {
            Link(
                node,
                Add(
                    GenealogyGroup.Vessel,
                    new RecordName("production-lot", lot, vessel.ProductionLot),
                    "production lot"
                ),
                "belongs to"
            );
        }
    }

    private void AddMaterial()
    {
        foreach (var component in vessel.Components)
        {
            var part = PartOf(component);
            Link(
                Add(
                    GenealogyGroup.MaterialLots,
                    new RecordName(
                        "material-lot",
                        component.MaterialLotId,
                        component.MaterialLotNumber
                    ),
                    Find<MaterialLot>(component.MaterialLotId) is { } lot
                        ? $"{lot.Alloy}-{lot.Temper} {lot.Form}, cast {lot.CastNumber}"
                        : $"cast {component.CastNumber}"
                ),
                part,
                "was cut into"
            );
            Link(part, Node(vessel), "was built into");
        }

        foreach (var treatment in All<HeatTreatment>().OrderBy(t => t.On))
        {
            var node = Add(
                GenealogyGroup.HeatTreatments,
                treatment,
                $"{treatment.On:yyyy-MM-dd}, {(treatment.IsKept ? "cycle kept" : "cycle not kept")}"
            );
            foreach (var part in treatment.Parts)
            {
                if (
                    _nodes.GetValueOrDefault(
                        Key(part.IsVessel ? "vessel" : "component", part.Id)
                    ) is
                    { } treated
                )
                {
                    Link(node, treated, "treated");
                }
            }
        }
    }

    private GenealogyNode PartOf(Component component)
    {
        var detail = component.Serial == component.Name ? "" : component.Name;
        return component.ComponentId is { } id
            ? Add(GenealogyGroup.Parts, new RecordName("component", id, component.Serial), detail)
            : Put(
                new(
                    $"part:{component.Name}:{component.Serial}",
                    GenealogyGroup.Parts,
                    null,
                    component.Serial,
                    detail
                )
            );
    }

    private GenealogyNode Person(Guid id, string name) =>
        Add(GenealogyGroup.People, new RecordName("person", id, name), "");

    private GenealogyNode ToolDesignNode(Guid id, string label) =>
        Add(
            GenealogyGroup.ToolDesigns,
            new RecordName("tool-design", id, Find<ToolDesign>(id)?.Label ?? label),
            ""
        );

    private static string Key(string kind, Guid id) => $"{kind}:{id:N}";

    private GenealogyNode Node(Record record) => _nodes[Key(record.Kind, record.Id)];

    private GenealogyNode Add(GenealogyGroup group, Record record, string detail) =>
        Add(group, RecordName.Of(record), detail);

    private GenealogyNode Add(GenealogyGroup group, RecordName name, string detail) =>
        Put(new(Key(name.Kind, name.Id), group, name, name.Label, detail));

    private GenealogyNode Put(GenealogyNode node) =>
        _nodes.TryGetValue(node.Key, out var known) ? known : _nodes[node.Key] = node;

    private void Link(GenealogyNode one, GenealogyNode other, string word)
    {
        var isInOrder = one.Column <= other.Column;
        var ends = isInOrder ? (one.Key, other.Key) : (other.Key, one.Key);
        if (!_links.TryGetValue(ends, out var words))
        {
            _links[ends] = words = [];
        }

        if (!words.Contains(word))
        {
            words.Add(word);
        }
    }

    private IEnumerable<T> All<T>()
        where T : Record => _records.Values.OfType<T>();

    private T? Find<T>(Guid id)
        where T : Record => _records.GetValueOrDefault(id) as T;
}
