using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Equipment;

/// <summary>State of a machine.</summary>
public enum MachineState
{
    /// <summary>May weld production.</summary>
    InUse,

    /// <summary>May weld nothing but test welds until three satisfactory ones are recorded and it is opened again.</summary>
    NeedsReproducibilityTest,

    /// <summary>Welds nothing until an engineer or the quality manager clears it.</summary>
    Locked,
}

/// <summary>What happened to a machine, or what was done about it.</summary>
public enum MachineEventKind
{
    /// <summary>Newly installed.</summary>
    Installed,

    /// <summary>Refurbished.</summary>
    Refurbished,

    /// <summary>A critical component was repaired or replaced after damage or malfunction.</summary>
    CriticalRepair,

    /// <summary>Any other repair.</summary>
    OtherRepair,

    /// <summary>Relocated, or moved outside its design.</summary>
    Moved,

    /// <summary>Dislodged.</summary>
    Dislodged,

    /// <summary>It did something else than it should.</summary>
    Malfunction,

    /// <summary>Somebody doubts that it welds well.</summary>
    Doubt,

    /// <summary>A test weld was made and examined.</summary>
    TestWeld,

    /// <summary>A doubt or malfunction was cleared, with a reason.</summary>
    Cleared,

    /// <summary>Opened again for production after the test welds.</summary>
    Reopened,
}

/// <summary>A test weld by which a machine shows that it welds as before.</summary>
/// <param name="ProcedureRevisionId">Released procedure revision it was welded to.</param>
/// <param name="ProcedureLabel">Number and revision of that procedure.</param>
/// <param name="WelderId">Who welded.</param>
/// <param name="WelderName">Printed name.</param>
/// <param name="ExaminerId">Who examined it; another person.</param>
/// <param name="ExaminerName">Printed name.</param>
/// <param name="IsSatisfactory">Whether it met the acceptance levels of the procedure.</param>
public sealed record TestWeld(
    Guid ProcedureRevisionId,
    string ProcedureLabel,
    Guid WelderId,
    string WelderName,
    Guid ExaminerId,
    string ExaminerName,
    bool IsSatisfactory
);

/// <summary>One line of a machine's log.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="On">Day on which it happened.</param>
/// <param name="Text">What was seen or done, in words.</param>
/// <param name="ById">Who recorded it.</param>
/// <param name="ByName">Printed name.</param>
/// <param name="At">UTC instant of the entry.</param>
/// <param name="FileSha256">A paper handed in with it; null when there was none.</param>
/// <param name="Weld">The test weld; null for anything else.</param>
public sealed record MachineEvent(
    MachineEventKind Kind,
    DateOnly On,
    string Text,
    Guid ById,
    string ByName,
    DateTimeOffset At,
    string? FileSha256 = null,
    TestWeld? Weld = null
);

/// <summary>The largest values that a machine can hold; null where nobody has stated one.</summary>
/// <param name="SpindleSpeed">Largest spindle speed; above zero.</param>
/// <param name="TravelSpeed">Largest travel speed; above zero.</param>
/// <param name="Force">Largest axial force; above zero.</param>
/// <param name="Torque">Largest torque on the spindle; above zero.</param>
public sealed record MachineCapability(
    RotationSpeed? SpindleSpeed,
    Speed? TravelSpeed,
    Force? Force,
    Torque? Torque
)
{
    private const double Tolerance = 1e-9;

    /// <summary>Whether nothing is stated.</summary>
    public bool IsEmpty => this == new MachineCapability(null, null, null, null);

    /// <summary>Why the machine can't hold a window, in a sentence; null when it can, or when nobody has stated the largest value.</summary>
    /// <param name="window">Window of a procedure.</param>
    public string? Against(ParameterWindow window)
    {
        ArgumentNullException.ThrowIfNull(window);
        if (LargestSi(window.Parameter) is not { } largest)
        {
            return null;
        }

        var shown = ParameterUnits.FromSi(window.Parameter, largest, window.Unit);
        return (double)window.Upper <= shown * (1 + Tolerance)
            ? null
            : FormattableString.Invariant(
                $"{ParameterNames.Of(window.Parameter)} may go up to {window.Upper} {window.Unit}; the machine reaches {shown:0.###} {window.Unit}."
            );
    }

    private double? LargestSi(WeldParameter parameter) =>
        parameter switch
        {
            WeldParameter.SpindleSpeed => SpindleSpeed?.SiValue,
            WeldParameter.TravelSpeed => TravelSpeed?.SiValue,
            WeldParameter.AxialForce => Force?.SiValue,
            WeldParameter.Torque => Torque?.SiValue,
            _ => null,
        };
}

/// <summary>What the plate of a machine says; what isn't known is null.</summary>
/// <param name="Maker">Who made it.</param>
/// <param name="Model">Maker's word for the model.</param>
/// <param name="SerialNumber">Maker's serial number.</param>
public sealed record MachineNameplate(string? Maker, string? Model, string? SerialNumber)
{
    /// <summary>Whether nothing is stated.</summary>
    public bool IsEmpty => this == new MachineNameplate(null, null, null);
}
