namespace WeldTrace.Engineering.Signals;

/// <summary>What the tool does at a moment of a logged run.</summary>
public enum WeldPhase
{
    /// <summary>The tool does not touch the work.</summary>
    Idle,

    /// <summary>From first contact until the tool is at depth.</summary>
    Plunge,

    /// <summary>At depth, not yet travelling.</summary>
    Dwell,

    /// <summary>Travelling along the joint, ramps included.</summary>
    Traverse,

    /// <summary>From the end of travel until the tool is free of the work.</summary>
    Exit,
}
