namespace WeldTrace.Web.Components.Figures;

/// <summary>Which of a quantity's units is meant where the trade uses more than one.</summary>
public enum UnitScale
{
    /// <summary>Dimensions in mm or in; pressures in bar or psi.</summary>
    Usual,

    /// <summary>Length of a seam or of a tool's life: m or ft.</summary>
    Path,

    /// <summary>Small differences: µm or mil; mbar or psi.</summary>
    Fine,

    /// <summary>Stress: MPa or psi.</summary>
    Stress,
}
