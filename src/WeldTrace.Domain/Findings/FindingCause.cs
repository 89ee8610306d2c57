namespace WeldTrace.Domain.Findings;

/// <summary>What kind of defect a finding is about: imperfections of friction-stir welds (terms of ISO 25239-1 and -5:2020), and what else goes wrong.</summary>
public enum DefectType
{
    /// <summary>Crack of any size.</summary>
    Crack,

    /// <summary>Void inside the stirred metal.</summary>
    Cavity,

    /// <summary>Void that opens at the surface.</summary>
    SurfaceCavity,

    /// <summary>Foreign matter in the weld.</summary>
    SolidInclusion,

    /// <summary>Thickness not welded through.</summary>
    IncompletePenetration,

    /// <summary>Trace of the faying surface or oxide.</summary>
    JointRemnant,

    /// <summary>Faying surface bent beside the stirred metal.</summary>
    Hook,

    /// <summary>Joint area drawn out of shape.</summary>
    JointAreaDeformation,

    /// <summary>Face below the surface of the parent material.</summary>
    Underfill,

    /// <summary>Metal pushed out along the toe.</summary>
    ToeFlash,

    /// <summary>Surfaces parallel but offset.</summary>
    LinearMisalignment,

    /// <summary>Surfaces at an angle.</summary>
    AngularMisalignment,

    /// <summary>Rough or uneven face.</summary>
    IrregularSurface,

    /// <summary>Several imperfections together.</summary>
    Multiple,

    /// <summary>It leaks.</summary>
    Leak,

    /// <summary>It grew or did not hold its pressure.</summary>
    PressureBehaviour,

    /// <summary>Strength, bend or hardness off its limit.</summary>
    MechanicalValue,

    /// <summary>A dimension off its tolerance.</summary>
    Dimension,

    /// <summary>A parameter left its window.</summary>
    ParameterExcursion,

    /// <summary>A weld was interrupted.</summary>
    Interruption,

    /// <summary>Wrong or doubtful material.</summary>
    Material,

    /// <summary>An instrument or a tool was not as it should be.</summary>
    Equipment,

    /// <summary>A paper or record is wrong or missing.</summary>
    Documentation,

    /// <summary>Handling damage.</summary>
    Damage,

    /// <summary>None of these; the text says what.</summary>
    Other,
}

/// <summary>What went wrong, and why.</summary>
/// <param name="Type">Kind of defect.</param>
/// <param name="Text">The cause in words; 1 to 1000 characters.</param>
/// <param name="PersonId">Who stated it.</param>
/// <param name="PrintedName">Printed name.</param>
/// <param name="At">UTC instant.</param>
public sealed record FindingCause(
    DefectType Type,
    string Text,
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At
);
