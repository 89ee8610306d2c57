using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Vessels;

// The vessel in its production lot, and as a destructive sample of it.
public sealed partial class Vessel
{
    private VesselState WhenDone => Sample is null ? VesselState.Accepted : VesselState.Expended;

    internal void GatherInto(ProductionLot lot, Actor actor, DateTimeOffset at)
    {
        (LotId, ProductionLot) = (lot.Id, lot.Number);
        Note(actor, at, "gathered into a production lot", $"lot {lot.Number}");
    }

    // A sample goes through the steps that are for its kind, and is never accepted.
    internal void BecomeSample(
        ProductionLot lot,
        LotSample sample,
        VesselDesign design,
        Actor actor,
        DateTimeOffset at
    )
    {
        Sample = new(sample.Kind, lot.Number);
        Steps =
        [
            .. design
                .Content.Route.Where(s =>
                    s.Kind != StepKind.Acceptance && (s.OnlyFor is null || s.OnlyFor == sample.Kind)
                )
                .Select(s => Step(s.Sequence) ?? Begin(s, 1)),
        ];
        if (NextStep is { State: StepState.Waiting } next)
        {
            Replace(next with { State = StepState.Ready });
        }

        Note(
            actor,
            at,
            "chosen as a destructive sample",
            $"{SamplePlan.KindWord(sample.Kind)} sample of lot {lot.Number}"
        );
    }
}
