using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Importing;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.People.Import;

/// <summary>
/// Enters people from a list. A list holds no passwords: each account is made without one, and its owner signs in once somebody has set
/// the first password on the person's page.
/// </summary>
public sealed class ImportPeopleHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    NewAccount accounts,
    TimeProvider clock
)
{
    private const string NameColumn = "printed name";
    private const string SignInColumn = "sign-in name";
    private const string RolesColumn = "roles";

    private static readonly char[] Separators = [',', ';', '/', '+'];

    public static IReadOnlyList<ImportColumn> Columns { get; } =
    [
        new(NameColumn, "name as it stands beside signatures", true),
        new(SignInColumn, "name to sign in with; given once", true),
        new(
            RolesColumn,
            $"one or more of {string.Join(", ", Enum.GetValues<Role>().Select(RoleRules.Word))}, with / between them",
            true
        ),
    ];

    // Columns of the list as it is exported.
    private static readonly string[] Ignored = ["state"];

    public async Task<ImportResult> HandleAsync(
        string text,
        bool isConfirmed,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var list = CsvImport.Read(text, Columns, Ignored);
        if (list.Problems.Count > 0)
        {
            return ImportResult.Unreadable(list.Problems);
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var people = list.Rows.Select(r => Read(r, actor, clock.GetUtcNow())).ToList();
        var names = people.Select(p => p.Name).ToList();
        var taken = await db
            .People.Where(p => names.Contains(p.SignInName))
            .Select(p => p.SignInName)
            .ToHashSetAsync(cancellation);
        db.AddRange(
            people.Select(p => p.Record).OfType<Person>().Select(accounts.WithoutPasswordFor)
        );
        return await db.FinishAsync(people, taken, isConfirmed, cancellation);
    }

    private static ImportedRecord<Person> Read(ImportRow row, Actor actor, DateTimeOffset at)
    {
        List<Refusal> refusals = [];
        var roles = Roles(row[RolesColumn], refusals);
        refusals.AddRange(ManagePeople.Against(actor, roles.Contains(Role.Administrator)));
        var person = Person.Enter(row[NameColumn], row[SignInColumn], roles, actor, at);
        // A word that is no role is told already.
        refusals.AddRange(
            person.Refusals.Where(r => r.Code != "roles" || row[RolesColumn].Length == 0)
        );
        var what = $"{row[NameColumn]}, {string.Join(" and ", roles.Select(RoleRules.Word))}";
        return new(row, row[SignInColumn], what, person.Value, refusals);
    }

    private static List<Role> Roles(string text, List<Refusal> refusals)
    {
        List<Role> roles = [];
        foreach (
            var word in text.Split(
                Separators,
                StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
            )
        )
        {
            Role[] named =
            [
                .. Enum.GetValues<Role>()
                    .Where(r => RoleRules.Word(r).Equals(word, StringComparison.OrdinalIgnoreCase)),
            ];
            roles.AddRange(named);
            if (named.Length == 0)
            {
                refusals.Add(
                    new(
                        "role-word",
                        $"'{word}' is no role; write {string.Join(", ", Enum.GetValues<Role>().Select(RoleRules.Word))}."
                    )
                );
            }
        }

        return roles;
    }
}
