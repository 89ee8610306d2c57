namespace WeldTrace.Domain.VesselDesigns;

/// <summary>State of a design revision.</summary>
public enum DesignState
{
    /// <summary>Being drawn.</summary>
    Draft,

    /// <summary>Vessels may be planned to it.</summary>
    Released,

    /// <summary>A later revision was released.</summary>
    Superseded,
}
