using System.Text.Json.Nodes;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Documents.Exchange;

/// <summary>How lots, components and the vessel came to be, and how the vessel ended.</summary>
internal static class EpcisThings
{
    private const string Gone = "vessel expended";

    private static readonly IReadOnlyList<(
        string Act,
        string Action,
        string Step,
        string State
    )> Ends =
    [
        ("vessel shipped", "OBSERVE", "shipping", "in_transit"),
        (Gone, "DELETE", "destroying", "destroyed"),
        ("vessel scrapped", "DELETE", "decommissioning", "non_conformant"),
        ("vessel put on hold", "OBSERVE", "holding", "non_conformant"),
        ("hold lifted", "OBSERVE", "other", "in_progress"),
    ];

    public static IEnumerable<EpcisEvent> Of(ExchangeSource source) =>
        source
            .Records.OrderBy(r => r.Id)
            .SelectMany(r =>
                r switch
                {
                    MaterialLot lot => Begin(source, r, "receiving", $"lot {lot.Number}", Of(lot)),
                    CutComponent part => Begin(
                        source,
                        r,
                        "commissioning",
                        $"component {part.Serial}",
                        Of(source, part)
                    ),
                    Vessel vessel when vessel.Id == source.VesselId =>
                    [
                        .. Begin(source, r, "commissioning", $"vessel {vessel.Serial}", Of(vessel)),
                        .. Later(source, vessel),
                    ],
                    _ => [],
                }
            );

    private static IEnumerable<EpcisEvent> Begin(
        ExchangeSource source,
        Record record,
        string step,
        string words,
        JsonObject master
    ) =>
        source
            .Of(record.Id)
            .Take(1)
            .Select(e => new EpcisEvent(e, "ObjectEvent")
            {
                At = e.At,
                Action = "ADD",
                BizStep = step,
                Disposition = "in_progress",
                Things = [record.Id],
                Master = master,
                Words = words,
            });

    private static IEnumerable<EpcisEvent> Later(ExchangeSource source, Vessel vessel) =>
        source
            .Of(vessel.Id)
            .Skip(1)
            .SelectMany(e =>
                Ends.Where(end => e.Act.Contains(end.Act, StringComparison.Ordinal))
                    .Take(1)
                    .Select(end => new EpcisEvent(e, "ObjectEvent")
                    {
                        At = e.At,
                        Action = end.Action,
                        BizStep = end.Step,
                        Disposition = end.State,
                        Things = [vessel.Id],
                        Words = e.Reason ?? e.Act,
                    })
            );

    private static JsonObject Of(MaterialLot lot) =>
        Master(
            ("number", lot.Number),
            ("alloy", lot.Alloy),
            ("temper", lot.Temper),
            ("castNumber", lot.CastNumber),
            ("form", lot.Form)
        );

    private static JsonObject Of(ExchangeSource source, CutComponent part)
    {
        var master = Master(
            ("serial", part.Serial),
            ("kind", part.PartKind),
            ("lotNumber", part.LotNumber)
        );
        if (source.Holds(part.LotId))
        {
            master[EpcisHistory.Own("lot")] = RecordUri.Of(part.LotId);
        }

        return master;
    }

    private static JsonObject Of(Vessel vessel) =>
        Master(
            ("serial", vessel.Serial),
            ("design", vessel.DesignLabel),
            ("productionLot", vessel.ProductionLot)
        );

    private static JsonObject Master(params IReadOnlyList<(string Name, string Text)> values) =>
        new(
            values
                .Where(v => v.Text.Length > 0)
                .Select(v => KeyValuePair.Create(EpcisHistory.Own(v.Name), (JsonNode?)v.Text))
        );
}
