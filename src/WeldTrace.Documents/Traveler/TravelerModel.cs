namespace WeldTrace.Documents.Traveler;

/// <summary>Everything a vessel's traveler prints. Missing values are null or empty and print as an en dash.</summary>
public sealed record TravelerModel
{
    public required DocumentStamp Stamp { get; init; }

    public required VesselIdentity Vessel { get; init; }

    /// <summary>Absolute address of the vessel's page; printed as a QR code and in text.</summary>
    public required string RecordAddress { get; init; }

    public IReadOnlyList<ComponentLine> Components { get; init; } = [];

    /// <summary>Heat treatments, cleanings and fit-ups, oldest first.</summary>
    public IReadOnlyList<PreparationLine> Preparation { get; init; } = [];

    public IReadOnlyList<RouteStation> Route { get; init; } = [];

    public IReadOnlyList<JointSheet> Joints { get; init; } = [];

    public IReadOnlyList<WeldRunSheet> WeldRuns { get; init; } = [];

    public IReadOnlyList<LeakTestSheet> LeakTests { get; init; } = [];

    public IReadOnlyList<PressureTestSheet> PressureTests { get; init; } = [];

    public IReadOnlyList<SectionSheet> Sections { get; init; } = [];

    /// <summary>Laboratory tests of samples of the vessel and its lot.</summary>
    public IReadOnlyList<LaboratoryLine> Laboratory { get; init; } = [];

    public IReadOnlyList<FindingSheet> Findings { get; init; } = [];

    public IReadOnlyList<ConcessionSheet> Concessions { get; init; } = [];

    public IReadOnlyList<SignatureEntry> Signatures { get; init; } = [];

    /// <summary>Roles for which the last page leaves room to sign by hand, for instance an invited witness.</summary>
    public IReadOnlyList<string> SignedOnPaper { get; init; } = [];

    /// <summary>Limits whose source nobody has yet checked against the site's own copy; printed in a notice.</summary>
    public IReadOnlyList<string> UncheckedLimits { get; init; } = [];
}

/// <summary>Head of the traveler.</summary>
public sealed record VesselIdentity
{
    public required string Serial { get; init; }

    public required string Design { get; init; }

    public required string DesignRevision { get; init; }

    public string? ProductionLot { get; init; }

    public required StateMark State { get; init; }

    /// <summary>Whatever else identifies the vessel or its rating, values with units.</summary>
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];
}

/// <summary>A component of the vessel with the material it was made from.</summary>
public sealed record ComponentLine
{
    public required string Name { get; init; }

    public required string Serial { get; init; }

    /// <summary>Alloy and temper, for instance <c>EN AW-6082 T6</c>.</summary>
    public string? Material { get; init; }

    public string? CastNumber { get; init; }

    /// <summary>Kind and number of the inspection certificate.</summary>
    public string? Certificate { get; init; }

    public Correction? Superseded { get; init; }
}

/// <summary>Something done to a component or a joint before welding.</summary>
/// <param name="When">Day, or day and time at the site.</param>
/// <param name="What">Heat treatment, cleaning or fit-up.</param>
/// <param name="Of">Components, vessel or joint.</param>
/// <param name="Text">What was done and found, values with units.</param>
/// <param name="By">Printed name.</param>
public sealed record PreparationLine(string When, string What, string Of, string Text, string By);

/// <summary>Whether work stops or a witness is invited at a step.</summary>
public enum StepPoint
{
    None,
    Hold,
    Witness,
}

/// <summary>One step of the route, drawn as a station on the seam line.</summary>
public sealed record RouteStation
{
    public required string Number { get; init; }

    public required string Title { get; init; }

    public required StateMark State { get; init; }

    public StepPoint Point { get; init; }

    public string? DoneBy { get; init; }

    public DateTimeOffset? DoneAt { get; init; }

    /// <summary>A remark in one sentence, for instance the concession that waived the step.</summary>
    public string? Remark { get; init; }
}
