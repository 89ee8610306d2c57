using WeldTrace.Domain.Material;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>F7: every state of a lot and its inspection document.</summary>
internal static class MaterialCauses
{
    private const InspectionDocumentType Specific = InspectionDocumentType.Type31;

    public static IReadOnlyList<GateCause> All { get; } =
    [
        new(
            "F7",
            "lot not on file",
            ["The lot of NR4-0001-S is not on file"],
            () => GateCauses.Ready(f => f with { Material = new MaterialFacts([], [], null) })
        ),
        new(
            "F7",
            "lot of another alloy",
            ["is 6082-T6, the design asks for 6061-T6", "take another component"],
            () => With(SampleMaterial.Bare(alloy: "6082"))
        ),
        new(
            "F7",
            "lot of another temper",
            ["is 6061-T4, the procedure is for 6061-T6"],
            () => With(SampleMaterial.Bare(temper: "T4"))
        ),
        new(
            "F7",
            "no inspection document",
            ["no inspection document on file, 3.1 is asked for"],
            () => With(SampleMaterial.Bare(), Specific)
        ),
        new(
            "F7",
            "weaker inspection document",
            ["inspection document 2.2, 3.1 is asked for"],
            () => With(Filed(InspectionDocumentType.Type22, true), Specific)
        ),
        new(
            "F7",
            "document not scanned in",
            ["is not scanned in"],
            () => With(Filed(Specific, false), Specific)
        ),
        new(
            "F7",
            "results not entered",
            ["results of the inspection document", "not entered"],
            () => With(Filed(Specific, true), Specific)
        ),
        new("F7", "result below a minimum", ["misses a minimum", "Rm"], () => With(Soft())),
        new("F7", "heat treatment not kept", ["158 min is shorter"], BadlyTreated),
    ];

    private static WeldGateFacts With(MaterialLot lot, InspectionDocumentType? siteDocument = null)
    {
        var shop = new SampleShop(lot: lot);
        return shop.Facts() with { Material = new MaterialFacts([lot], [], siteDocument) };
    }

    private static MaterialLot Filed(InspectionDocumentType type, bool isScanned)
    {
        var lot = SampleMaterial.Bare();
        Accept.All(
            lot.FileDocument(
                type,
                "EN 755-2",
                isScanned ? new string('d', 64) : null,
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );
        return lot;
    }

    private static MaterialLot Soft()
    {
        var lot = Filed(Specific, true);
        Accept.All(
            lot.RecordResults(
                SampleMaterial.Values("250", "250", "15"),
                SampleMaterial.Minima(),
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );
        return lot;
    }

    private static WeldGateFacts BadlyTreated()
    {
        var shop = new SampleShop();
        var treatment = SampleHeat.Entered(
            "158",
            [new TreatedPart(shop.Vessel.Id, shop.Vessel.Serial, true)]
        );
        return shop.Facts() with { Material = new MaterialFacts([shop.Lot], [treatment], null) };
    }
}
