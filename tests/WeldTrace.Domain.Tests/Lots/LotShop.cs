using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Domain.Tests.Lots;

/// <summary>Planned vessels of a design that asks for samples, and their lot.</summary>
internal sealed class LotShop
{
    public LotShop(int vessels = 5, int bursts = 0, SampleChoice sections = SampleChoice.Drawn)
    {
        ToolDesign = SampleTools.Design();
        Procedure = SampleProcedures.Released(ToolDesign);
        Design = SampleLots.Design(SampleLots.Plan(bursts, sections));
        Material = SampleMaterial.Lot();
        Vessels = SampleLots.Vessels(Design, Material, vessels);
    }

    public ToolDesign ToolDesign { get; }

    public ProcedureRevision Procedure { get; }

    public VesselDesign Design { get; }

    public MaterialLot Material { get; }

    public IReadOnlyList<Vessel> Vessels { get; }

    public LotRule Rule => SampleLots.Rule(Procedure, ToolDesign);

    public Outcome<ProductionLot> Form(
        LotRule? rule = null,
        IReadOnlyList<Vessel>? vessels = null,
        Actor? actor = null
    ) =>
        ProductionLot.Form(
            "L-1",
            Design,
            rule ?? Rule,
            vessels ?? Vessels,
            actor ?? SamplePeople.Engineer,
            SampleTime.Start
        );

    public ProductionLot Sampled(params IReadOnlyList<NamedSample> named)
    {
        var lot = Accept.Value(Form());
        Accept.All(Choose(lot, null, named));
        return lot;
    }

    public Outcome Choose(
        ProductionLot lot,
        Actor? actor = null,
        params IReadOnlyList<NamedSample> named
    ) =>
        lot.ChooseSamples(
            named,
            Vessels,
            Design,
            actor ?? SamplePeople.Inspector,
            SampleTime.Start
        );

    public IReadOnlyList<Finding> Take(
        ProductionLot lot,
        LotSample sample,
        Verdict verdict = Verdict.Pass,
        double? burstBar = null
    ) =>
        lot.TakeResult(
            SampleLots.Result(sample, verdict, burstBar),
            Vessel(sample),
            Vessels,
            SamplePeople.Inspector,
            SampleTime.Start
        );

    public string Statement(ProductionLot lot) => string.Join(' ', State(lot).Sentences);

    public IEnumerable<string> AcceptCodes(ProductionLot lot) =>
        lot.Accept(State(lot), [], SamplePeople.Inspector, SampleTime.Start)
            .Refusals.Select(r => r.Code);

    private LotStatement State(ProductionLot lot) =>
        LotStatistics.State(lot, Design.Content.Pressures.Meop, 0, 0).Statement;

    public Vessel Vessel(LotSample sample) => Vessels.Single(v => v.Id == sample.VesselId);
}
