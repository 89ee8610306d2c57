namespace WeldTrace.Domain.Procedures;

/// <summary>State of a procedure revision.</summary>
public enum ProcedureState
{
    /// <summary>Being written; anything may change.</summary>
    Draft,

    /// <summary>pWPS: may be used on test pieces only.</summary>
    Trial,

    /// <summary>The qualification record is signed.</summary>
    Qualified,

    /// <summary>WPS: production may use it.</summary>
    Released,

    /// <summary>A later revision was released.</summary>
    Superseded,

    /// <summary>No longer to be used, without a successor.</summary>
    Withdrawn,
}
