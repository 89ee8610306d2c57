using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.People;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.People.List;

public static class PeopleCsv
{
    private static readonly string[] Heads = ["printed name", "roles", "state"];

    public static void MapPeopleCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.PeopleCsv,
            async (HttpContext http, PeopleListReader reader) =>
            {
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(
                        new Uri(http.Request.GetEncodedUrl()),
                        PeopleListReader.SortKeys
                    ),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("people.csv", Heads, rows.Select(Row));
            }
        );

    private static IReadOnlyList<string?> Row(Person person) =>
        [
            person.PrintedName,
            PeopleListReader.RoleWords(person),
            PeopleListReader.StateWord(person),
        ];
}
