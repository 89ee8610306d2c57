using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.TestSupport.Records;

/// <summary>Invented people as actors, one per role and a second where a rule asks for a second person.</summary>
public static class SamplePeople
{
    public static Actor Engineer { get; } = Make(1, "Ada Brandt", Role.Engineer);

    public static Actor SecondEngineer { get; } = Make(2, "Bo Lindqvist", Role.Engineer);

    /// <summary>The operators as entered in the records, since a certificate is a person's.</summary>
    public static IReadOnlyList<Person> Welders { get; } =
    [Entered("Cem Aydin", Role.Operator), Entered("Dilys Owen", Role.Operator)];

    public static Actor Operator { get; } = Welders[0].AsActor();

    public static Actor SecondOperator { get; } = Welders[1].AsActor();

    public static Actor Inspector { get; } = Make(5, "Emre Kaya", Role.Inspector);

    public static Actor Auditor { get; } = Make(6, "Fay Moreau", Role.Auditor);

    public static Actor QualityManager { get; } = Make(7, "Gil Navarro", Role.QualityManager);

    /// <summary>A person as entered in the records, with an identity of their own.</summary>
    public static Person Entered(string name, params IReadOnlyList<Role> roles) =>
        Accept.Value(
            Person.Enter(
                name,
                name.ToLowerInvariant().Replace(' ', '.'),
                roles,
                null,
                SampleTime.Start
            )
        );

    private static Actor Make(byte number, string name, Role role) =>
        new(new Guid(number, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, number), name, [role]);
}
