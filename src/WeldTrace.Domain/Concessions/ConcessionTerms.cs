using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Concessions;

/// <summary>State of a concession.</summary>
public enum ConcessionState
{
    /// <summary>One of the two has signed.</summary>
    Asked,

    /// <summary>Both have signed; the rule is waived for the step.</summary>
    Granted,

    /// <summary>Turned down or taken back before the second signature.</summary>
    Declined,
}

/// <summary>Who signed a concession.</summary>
/// <param name="PersonId">Person.</param>
/// <param name="PrintedName">Printed name.</param>
/// <param name="Roles">Those of the two roles that the person held: engineer, quality manager.</param>
/// <param name="At">UTC instant.</param>
public sealed record ConcessionSigner(
    Guid PersonId,
    string PrintedName,
    IReadOnlyList<Role> Roles,
    DateTimeOffset At
)
{
    internal static ConcessionSigner Of(Actor actor, DateTimeOffset at) =>
        new(
            actor.PersonId,
            actor.PrintedName,
            [.. Concession.Signers.Where(r => actor.HasAny(r))],
            at
        );

    // One of the two is the engineer, the other the quality manager.
    internal bool Completes(ConcessionSigner other) =>
        (Roles.Contains(Role.Engineer) && other.Roles.Contains(Role.QualityManager))
        || (Roles.Contains(Role.QualityManager) && other.Roles.Contains(Role.Engineer));
}
