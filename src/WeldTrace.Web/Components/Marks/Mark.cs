namespace WeldTrace.Web.Components.Marks;

/// <summary>The shapes that stand beside a state word, so that no state is told by colour alone.</summary>
public enum Mark
{
    /// <summary>Ring: nothing can be done yet.</summary>
    Waiting,

    /// <summary>Triangle pointing on: may be started now.</summary>
    Ready,

    /// <summary>Half-filled disc: begun, not ended.</summary>
    InProgress,

    /// <summary>Disc with a tick.</summary>
    Passed,

    /// <summary>Cross.</summary>
    Failed,

    /// <summary>Empty square: let through by concession.</summary>
    Waived,

    /// <summary>Pair of bars: stopped until somebody decides.</summary>
    Held,

    /// <summary>Diamond: measured, but inside the uncertainty band.</summary>
    Undecided,

    /// <summary>Dashed ring: written, binding nobody.</summary>
    Draft,

    /// <summary>Ring with a dot: for test pieces only.</summary>
    Trial,

    /// <summary>Ring with a bar: superseded, retired, withdrawn, closed.</summary>
    Ended,

    /// <summary>Upright triangle with a stroke: needs attention, forbids nothing.</summary>
    Warning,
}
