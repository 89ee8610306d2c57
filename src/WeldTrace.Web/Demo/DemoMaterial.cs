using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;

namespace WeldTrace.Web.Demo;

/// <summary>The invented material: two lots with their certificates, the components cut from them, and how joints are prepared.</summary>
internal sealed class DemoMaterial
{
    private DemoMaterial(
        MaterialLot tube,
        MaterialLot plate,
        MaterialLot cheap,
        IReadOnlyList<Attachment> papers
    ) => (Tube, Plate, Cheap, Papers) = (tube, plate, cheap, papers);

    public MaterialLot Tube { get; }

    public MaterialLot Plate { get; }

    /// <summary>A tube whose report of non-specific tests the design does not accept.</summary>
    public MaterialLot Cheap { get; }

    public IReadOnlyList<Attachment> Papers { get; }

    /// <summary>The lots that vessels and test pieces are made of.</summary>
    public IReadOnlyList<MaterialLot> Lots => [Tube, Plate];

    public static DemoMaterial Make(LimitTable minima, DemoCast cast, DemoClock clock)
    {
        var (tubePaper, platePaper, cheapPaper) = (
            DemoPaper.Of(
                "Inspection certificate 3.1, IC-40117: 6061-T6 tube 170 x 5, cast C-88213."
            ),
            DemoPaper.Of("Inspection certificate 3.1, IC-40652: 6061-T6 plate 20, cast C-90405."),
            DemoPaper.Of("Test report 2.2, TR-2207: 6061-T6 tube 170 x 5, cast C-91150.")
        );
        return new DemoMaterial(
            Lot(
                new("L-2611", "C-88213", "extruded tube 170 x 5", "IC-40117", "5.02"),
                new("312", "285", "16"),
                tubePaper,
                minima,
                cast,
                clock
            ),
            Lot(
                new("L-2612", "C-90405", "plate 20", "IC-40652", "20.1"),
                new("318", "281", "15"),
                platePaper,
                minima,
                cast,
                clock
            ),
            Lot(
                new("L-2613", "C-91150", "extruded tube 170 x 5", "TR-2207", "5.04")
                {
                    Type = InspectionDocumentType.Type22,
                },
                new("309", "280", "15"),
                cheapPaper,
                minima,
                cast,
                clock
            ),
            [tubePaper, platePaper, cheapPaper]
        );
    }

    /// <summary>The shell and the two ends of a vessel, cut from the lots.</summary>
    public IReadOnlyList<CutComponent> Cut(
        int number,
        MaterialLot tube,
        DemoCast cast,
        DemoClock clock
    ) =>
        [
            Component(FormattableString.Invariant($"S-{number:0000}"), "shell", tube, cast, clock),
            Component(FormattableString.Invariant($"E-{number:0000}L"), "end", Plate, cast, clock),
            Component(FormattableString.Invariant($"E-{number:0000}U"), "end", Plate, cast, clock),
        ];

    /// <summary>Cleans and fits a joint up when the procedure's time has run out, or when it was never done.</summary>
    public static async Task<PreparationFacts> MakeReadyAsync(
        WeldTraceDbContext db,
        Vessel vessel,
        string jointCode,
        ProcedureContent procedure,
        PreparationFacts facts,
        DemoTools tools,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        var begin = clock.AfterMinutes(1).AddMinutes(30);
        if (
            PreparationRules.ForWelding(jointCode, procedure, facts, begin).Standing
            == RuleStanding.Holds
        )
        {
            return facts;
        }

        var at = clock.AfterMinutes(8);
        var cleaning = JointCleaning
            .Record(
                vessel,
                jointCode,
                "Wiped with solvent, brushed with stainless steel, wiped again",
                true,
                at,
                cast.Operator,
                at
            )
            .Must();
        db.Add(cleaning);
        facts = facts with { Cleanings = [.. facts.Cleanings, cleaning] };
        if (facts.FitUpOf(jointCode) is null)
        {
            var measured = clock.AfterMinutes(6);
            var fitUp = JointFitUp
                .Record(
                    vessel,
                    jointCode,
                    new Measured("0.08", "mm"),
                    new Measured("0.05", "mm"),
                    tools.Micrometer,
                    tools.Micrometer.Mark,
                    "",
                    DateOnly.FromDateTime(measured.UtcDateTime),
                    cast.Operator,
                    measured
                )
                .Must();
            db.Add(fitUp);
            facts = facts with { FitUps = [.. facts.FitUps, fitUp] };
        }

        await db.SaveForDemoAsync(cancellation);
        return facts;
    }

    private static CutComponent Component(
        string serial,
        string kind,
        MaterialLot lot,
        DemoCast cast,
        DemoClock clock
    )
    {
        var at = clock.AfterMinutes(1);
        var today = DateOnly.FromDateTime(at.UtcDateTime);
        return CutComponent
            .Enter(serial, kind, lot, "own turning shop", today, today, cast.Operator, at)
            .Must();
    }

    private static MaterialLot Lot(
        DemoLot text,
        DemoResults results,
        Attachment paper,
        LimitTable minima,
        DemoCast cast,
        DemoClock clock
    )
    {
        var lot = MaterialLot
            .Enter(
                text.Number,
                "6061",
                "T6",
                text.Cast,
                text.Form,
                text.Certificate,
                cast.Inspector,
                clock.AfterMinutes(20)
            )
            .Must();
        lot.FileDocument(
                text.Type,
                "ASTM B241, ASTM B209",
                paper.Sha256,
                cast.Inspector,
                clock.AfterMinutes(3)
            )
            .Must();
        lot.RecordResults(
                new MaterialValues(
                    new Measured(results.Ultimate, "MPa"),
                    new Measured(results.Proof, "MPa"),
                    new Measured(results.Elongation, "%"),
                    new Measured(text.Thickness, "mm")
                ),
                minima,
                cast.Inspector,
                clock.AfterMinutes(4)
            )
            .Must();
        return lot;
    }

    private sealed record DemoLot(
        string Number,
        string Cast,
        string Form,
        string Certificate,
        string Thickness
    )
    {
        public InspectionDocumentType Type { get; init; } = InspectionDocumentType.Type31;
    }

    private sealed record DemoResults(string Ultimate, string Proof, string Elongation);
}
