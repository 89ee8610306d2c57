using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.People;

/// <summary>The one check that a person holds a role that an act asks for.</summary>
public static class RoleRules
{
    /// <summary>The refusal when the actor holds none of the roles; null when one is held.</summary>
    public static Refusal? Require(Actor actor, params IReadOnlyList<Role> roles)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(roles);
        return actor.HasAny(roles)
            ? null
            : new Refusal(
                "role",
                $"This act is for the {string.Join(" or the ", roles.Select(Word))}; your account has no such role."
            );
    }

    /// <summary>The word for a role.</summary>
    public static string Word(Role role) =>
        role switch
        {
            Role.Engineer => "engineer",
            Role.Operator => "operator",
            Role.Inspector => "inspector",
            Role.Auditor => "auditor",
            Role.QualityManager => "quality manager",
            Role.Administrator => "administrator",
            _ => throw new ArgumentOutOfRangeException(nameof(role), role, "Unknown role."),
        };
}
