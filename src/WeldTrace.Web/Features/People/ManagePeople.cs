using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Features.People;

/// <summary>Who may enter and change people.</summary>
internal static class ManagePeople
{
    private static readonly Refusal OnlyAdministrators = new(
        "administrator",
        "Only an administrator gives or takes the administrator's role, or changes an administrator's account.",
        nameof(PersonForm.Roles)
    );

    public static IEnumerable<Refusal> Against(Actor actor, bool concernsAdministrators)
    {
        if (RoleRules.Require(actor, Role.Administrator, Role.QualityManager) is { } refusal)
        {
            yield return refusal;
        }

        if (concernsAdministrators && !actor.HasAny(Role.Administrator))
        {
            yield return OnlyAdministrators;
        }
    }
}
