using WeldTrace.Domain.Procedures;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Procedures.List;

public static class ProcedureCsv
{
    private static readonly string[] Heads = ["number", "revision", "title", "state", "author"];

    public static void MapProcedureCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/procedures.csv",
            async (HttpContext http, ProcedureListReader reader) =>
            {
                var address = new Uri(
                    Microsoft.AspNetCore.Http.Extensions.UriHelper.GetEncodedUrl(http.Request)
                );
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(address, ProcedureListReader.SortKeys),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File(
                    "procedures.csv",
                    Heads,
                    rows.Select(p =>
                        (IReadOnlyList<string?>)
                            [
                                p.Number,
                                p.Revision,
                                p.Title,
                                ProcedureRevision.StateWord(p.State),
                                p.AuthorName,
                            ]
                    )
                );
            }
        );
}
