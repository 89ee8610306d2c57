using WeldTrace.Domain.People;

namespace WeldTrace.Web.Demo;

/// <summary>The invented people of the demonstration.</summary>
public static class DemoPeople
{
    public const string Password = "float deeper than fog";

    public static readonly DemoPerson Engineer = new("engineer", "Ingrid Solheim", [Role.Engineer]);
    public static readonly DemoPerson Operator = new("operator", "Tomas Reyes", [Role.Operator]);
    public static readonly DemoPerson Inspector = new(
        "inspector",
        "Amara Diallo",
        [Role.Inspector]
    );
    public static readonly DemoPerson Auditor = new("auditor", "Noor Haddad", [Role.Auditor]);
    public static readonly DemoPerson QualityManager = new(
        "quality",
        "Edwin Castle",
        [Role.QualityManager]
    );
    public static readonly DemoPerson Administrator = new(
        "admin",
        "Mirela Popa",
        [Role.Administrator]
    );

    public static IReadOnlyList<DemoPerson> All { get; } =
    [Engineer, Operator, Inspector, Auditor, QualityManager, Administrator];
}

/// <summary>An invented person.</summary>
public sealed record DemoPerson(string SignInName, string PrintedName, IReadOnlyList<Role> Roles);
