namespace WeldTrace.Domain.Vessels;

/// <summary>State of a vessel.</summary>
public enum VesselState
{
    /// <summary>Entered; nothing done yet.</summary>
    Planned,

    /// <summary>On its route.</summary>
    InWork,

    /// <summary>A finding stops it.</summary>
    OnHold,

    /// <summary>All steps done and accepted.</summary>
    Accepted,

    /// <summary>Left the site.</summary>
    Shipped,

    /// <summary>Used up as a destructive sample.</summary>
    Expended,

    /// <summary>Rejected for ever.</summary>
    Scrapped,
}
