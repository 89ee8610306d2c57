using WeldTrace.Domain.Lots;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Vessels;

/// <summary>A serial-numbered vessel on its route.</summary>
public sealed partial class Vessel : Record
{
    /// <summary>Longest serial number, lot or component name.</summary>
    public const int LongestText = 40;

    private Vessel(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "vessel";

    /// <inheritdoc/>
    public override string Label => Serial;

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [Id];

    /// <summary>Serial number; unique at the site.</summary>
    public string Serial { get; private set; } = "";

    /// <summary>Design revision it is made to.</summary>
    public Guid DesignId { get; private set; }

    /// <summary>Number and revision of that design.</summary>
    public string DesignLabel { get; private set; } = "";

    /// <summary>Production lot.</summary>
    public string ProductionLot { get; private set; } = "";

    /// <summary>Record of the production lot; null while it is gathered into none.</summary>
    public Guid? LotId { get; private set; }

    /// <summary>What it is sacrificed for; null when it is no destructive sample.</summary>
    public SampleDuty? Sample { get; private set; }

    /// <summary>State.</summary>
    public VesselState State { get; private set; }

    /// <summary>Route with the state of each step.</summary>
    public IReadOnlyList<RouteStep> Steps { get; private set; } = [];

    /// <summary>Components with their material lots.</summary>
    public IReadOnlyList<Component> Components { get; private set; } = [];

    /// <summary>Where it went; null while it is at the site.</summary>
    public Shipment? Shipment { get; private set; }

    /// <summary>First step that is not done; null when all are.</summary>
    public RouteStep? NextStep => Steps.FirstOrDefault(s => !s.IsDone);

    /// <summary>Whether nothing more happens to the vessel here.</summary>
    public bool IsFinal =>
        State is VesselState.Shipped or VesselState.Expended or VesselState.Scrapped;

    /// <summary>Whether a weld of it has been begun.</summary>
    public bool HasWeldingBegun =>
        Steps.Any(s =>
            s.Kind == StepKind.Weld && s.State is not (StepState.Waiting or StepState.Ready)
        );

    /// <summary>The step of a sequence number; null when the route has none.</summary>
    public RouteStep? Step(int sequence) => Steps.FirstOrDefault(s => s.Sequence == sequence);

    /// <summary>Enters a vessel on the route of its design.</summary>
    public static Outcome<Vessel> Plan(
        string serial,
        VesselDesign design,
        string productionLot,
        IReadOnlyList<Component> components,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(components);
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .Text(serial, LongestText, "Give the serial number", nameof(Serial))
            .Text(productionLot, LongestText, "Give the production lot", nameof(ProductionLot))
            .That(
                design.State == DesignState.Released,
                "design",
                $"{design.Label} is {VesselDesign.StateWord(design.State)}; a vessel needs a released design.",
                nameof(DesignId)
            )
            .That(
                components.Count > 0,
                "components",
                "Enter at least one component with its material lot.",
                nameof(Components)
            );
        CheckComponents(checks, components);
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var vessel = new Vessel(Guid.CreateVersion7(at))
        {
            Serial = serial.Trim(),
            DesignId = design.Id,
            DesignLabel = design.Label,
            ProductionLot = productionLot.Trim(),
            Components = [.. components],
            Steps = [.. design.Content.Route.Where(s => s.OnlyFor is null).Select(Begin)],
        };
        vessel.Note(actor, at, "vessel planned");
        return vessel;
    }

    /// <summary>Ships an accepted vessel.</summary>
    /// <param name="shipment">Where it goes.</param>
    /// <param name="actor">Inspector or quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Ship(Shipment shipment, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        var checks = new Checks()
            .Role(actor, Role.Inspector, Role.QualityManager)
            .That(
                State == VesselState.Accepted,
                "state",
                $"{Serial} is {StateWord(State)}; only an accepted vessel is shipped."
            );
        Shipment.Check(checks, shipment);
        if (checks.AllHold)
        {
            State = VesselState.Shipped;
            Shipment = new Shipment(shipment.Consignee.Trim(), shipment.Papers.Trim());
            Note(actor, at, "vessel shipped", $"to {Shipment.Consignee}, {Shipment.Papers}");
        }

        return checks.ToOutcome();
    }

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(VesselState state) =>
        state switch
        {
            VesselState.Planned => "planned",
            VesselState.InWork => "in work",
            VesselState.OnHold => "on hold",
            VesselState.Accepted => "accepted",
            VesselState.Shipped => "shipped",
            VesselState.Expended => "expended",
            VesselState.Scrapped => "scrapped",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    internal void PlaceOnHold(Actor actor, DateTimeOffset at, string reason)
    {
        if (!IsFinal && State != VesselState.OnHold)
        {
            State = VesselState.OnHold;
            Note(actor, at, "vessel put on hold", reason);
        }
    }

    internal void LiftHold(Actor actor, DateTimeOffset at)
    {
        if (State == VesselState.OnHold)
        {
            State = NextStep is null ? WhenDone : VesselState.InWork;
            Note(actor, at, "hold lifted");
        }
    }

    /// <summary>Used up as a destructive sample; nothing brings it back, not even a later decision.</summary>
    internal void Expend(Actor actor, DateTimeOffset at, string reason)
    {
        if (State != VesselState.Expended)
        {
            State = VesselState.Expended;
            Note(actor, at, "vessel expended", reason);
        }
    }

    internal void Scrap(Actor actor, DateTimeOffset at, string reason)
    {
        if (State is not (VesselState.Scrapped or VesselState.Expended))
        {
            State = VesselState.Scrapped;
            Note(actor, at, "vessel scrapped", reason);
        }
    }

    private static RouteStep Begin(RouteTemplateStep step, int index) =>
        new(
            step.Sequence,
            step.Kind,
            step.Title,
            step.JointCode,
            step.PassNumber,
            step.Stop,
            index == 0 ? StepState.Ready : StepState.Waiting,
            null,
            null
        );

    private static void CheckComponents(Checks checks, IReadOnlyList<Component> components)
    {
        foreach (var component in components)
        {
            checks
                .Text(component.Name, LongestText, "Name each component", nameof(Components))
                .Text(
                    component.Serial,
                    LongestText,
                    $"Give the serial or batch mark of {component.Name}",
                    nameof(Components)
                )
                .That(
                    component.MaterialLotId != Guid.Empty,
                    "lot",
                    $"Choose the material lot of {component.Name}.",
                    nameof(Components)
                );
        }
    }
}
