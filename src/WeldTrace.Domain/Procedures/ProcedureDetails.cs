using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Procedures;

/// <summary>Consequence of a failure of the joint (NASA-STD-5006A w/Change 2, 4.2 and figure 5).</summary>
public enum JointClass
{
    /// <summary>Loss of life or of the system.</summary>
    A,

    /// <summary>Loss of function.</summary>
    B,

    /// <summary>Neither.</summary>
    C,
}

/// <summary>How deep the weld goes.</summary>
public enum Penetration
{
    /// <summary>Through the whole thickness.</summary>
    Full,

    /// <summary>Part of the thickness.</summary>
    Partial,
}

/// <summary>Condition in which the joint is used, as the tensile tables name it (EN 14532-3:2004 table 2).</summary>
public enum PostWeldCondition
{
    /// <summary>As welded.</summary>
    AsWelded,

    /// <summary>Natural ageing.</summary>
    NaturalAgeing,

    /// <summary>Artificial ageing.</summary>
    ArtificialAgeing,

    /// <summary>Any other heat treatment, told in words.</summary>
    Other,
}

/// <summary>The other side of a joint between two materials or thicknesses.</summary>
/// <param name="Alloy">Alloy.</param>
/// <param name="Temper">Temper.</param>
/// <param name="Thickness">Thickness; above zero.</param>
public sealed record OtherParent(string Alloy, string Temper, Length Thickness);

/// <summary>A record that the procedure names.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Label">How it is called.</param>
public sealed record NamedRecord(Guid Id, string Label);

/// <summary>A sketch of the joint, kept as a file.</summary>
/// <param name="Sha256">SHA-256 of the file, hexadecimal.</param>
/// <param name="MediaType">Media type, found from the content.</param>
public sealed record JointSketch(string Sha256, string MediaType);

/// <summary>What a procedure lays down beyond joint, tool and windows. Everything may be left open while it is a draft.</summary>
public sealed record ProcedureDetails
{
    /// <summary>Nothing laid down.</summary>
    public static ProcedureDetails None { get; } = new();

    /// <summary>The other side; null when both sides are alike.</summary>
    public OtherParent? Other { get; init; }

    /// <summary>Outer diameter of the work; null for plates.</summary>
    public Length? OuterDiameter { get; init; }

    /// <summary>Class of the joint.</summary>
    public JointClass? Class { get; init; }

    /// <summary>Full or partial penetration.</summary>
    public Penetration? Penetration { get; init; }

    /// <summary>Largest gap at fit-up, in mm.</summary>
    public Measured? LargestGap { get; init; }

    /// <summary>Largest mismatch at fit-up, in mm.</summary>
    public Measured? LargestMismatch { get; init; }

    /// <summary>Longest time from cleaning to welding, in h.</summary>
    public Measured? CleaningLimit { get; init; }

    /// <summary>Machine; null when any of the control mode may weld it.</summary>
    public NamedRecord? Machine { get; init; }

    /// <summary>Control mode of the machine.</summary>
    public string? ControlMode { get; init; }

    /// <summary>Type of tool.</summary>
    public ToolType? ToolType { get; init; }

    /// <summary>Condition in which the joint is used.</summary>
    public PostWeldCondition? PostWeld { get; init; }

    /// <summary>Instruments that must be calibrated when it is welded.</summary>
    public IReadOnlyList<NamedRecord> Instruments { get; init; } = [];

    /// <summary>Sketch of the joint.</summary>
    public JointSketch? Sketch { get; init; }

    /// <summary>Fields in words; those left open are missing.</summary>
    public IReadOnlyList<Particular> Particulars { get; init; } = [];

    /// <summary>The text of a field; null when it was left open.</summary>
    public Particular? Of(ProcedureField field) =>
        Particulars.FirstOrDefault(p => p.Field == field);
}
