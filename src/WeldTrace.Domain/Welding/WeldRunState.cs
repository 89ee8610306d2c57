namespace WeldTrace.Domain.Welding;

/// <summary>State of a weld run.</summary>
public enum WeldRunState
{
    /// <summary>The machine is welding.</summary>
    Running,

    /// <summary>Ended as planned.</summary>
    Ended,

    /// <summary>Ended before the planned path was welded.</summary>
    Interrupted,
}
