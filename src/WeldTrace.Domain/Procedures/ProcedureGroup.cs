namespace WeldTrace.Domain.Procedures;

/// <summary>Groups of fields, in the order in which an engineer sets up a weld.</summary>
public enum ProcedureGroup
{
    /// <summary>What it is and by which standard.</summary>
    Identity,

    /// <summary>Parent material on each side.</summary>
    ParentMaterial,

    /// <summary>Joint, its fit-up and the places on the seam.</summary>
    Joint,

    /// <summary>Cleaning.</summary>
    Cleaning,

    /// <summary>Machine and instruments.</summary>
    Equipment,

    /// <summary>Tool.</summary>
    Tool,

    /// <summary>Clamping and backing.</summary>
    Clamping,

    /// <summary>Parameters with their windows.</summary>
    Parameters,

    /// <summary>Thermal conditions.</summary>
    Thermal,

    /// <summary>Work after welding.</summary>
    AfterWelding,
}
