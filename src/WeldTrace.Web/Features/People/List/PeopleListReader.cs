using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;

namespace WeldTrace.Web.Features.People.List;

/// <summary>The people of the site. Roles lie in a document and a site has few people, so the list is narrowed after it is read.</summary>
public sealed class PeopleListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string NameFilter = "name";
    public const string RoleFilter = "role";
    public const string StateFilter = "state";

    public static IReadOnlyList<string> SortKeys { get; } = ["name", "roles", "state"];

    public async Task<(IReadOnlyList<Person> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var people = await db
            .People.AsNoTracking()
            .OrderBy(p => p.PrintedName)
            .ToListAsync(cancellation);
        var fitting = people.Where(p => Fits(p, query)).ToList();
        var sorted = Sort(fitting, query);
        return ([.. whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)], fitting.Count);
    }

    public static string StateWord(Person person)
    {
        ArgumentNullException.ThrowIfNull(person);
        return person.IsActive ? "active" : "inactive";
    }

    public static string RoleWords(Person person)
    {
        ArgumentNullException.ThrowIfNull(person);
        return string.Join(", ", person.Roles.Select(RoleRules.Word));
    }

    private static bool Fits(Person person, TableQuery query) =>
        person.PrintedName.Contains(
            query.Filter(NameFilter).Trim(),
            StringComparison.CurrentCultureIgnoreCase
        )
        && (
            !Enum.TryParse<Role>(query.Filter(RoleFilter), out var role)
            || person.Roles.Contains(role)
        )
        && query.Filter(StateFilter) is var state
        && (state.Length == 0 || state == StateWord(person));

    private static IEnumerable<Person> Sort(List<Person> people, TableQuery query)
    {
        Func<Person, string> key = query.Sort switch
        {
            "roles" => RoleWords,
            "state" => StateWord,
            _ => p => p.PrintedName,
        };
        return query.Descending
            ? people.OrderByDescending(key, StringComparer.CurrentCultureIgnoreCase)
            : people.OrderBy(key, StringComparer.CurrentCultureIgnoreCase);
    }
}
