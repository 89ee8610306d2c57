using WeldTrace.Domain.People;

namespace WeldTrace.Domain.Records;

/// <summary>The signed-in person who acts, with the roles held at this moment.</summary>
/// <param name="PersonId">Identity of the person.</param>
/// <param name="PrintedName">Name as printed beside signatures.</param>
/// <param name="Roles">Roles held.</param>
public sealed record Actor(Guid PersonId, string PrintedName, IReadOnlyList<Role> Roles)
{
    /// <summary>Whether the person holds at least one of the roles.</summary>
    public bool HasAny(params IReadOnlyList<Role> roles)
    {
        ArgumentNullException.ThrowIfNull(roles);
        return roles.Any(Roles.Contains);
    }
}
