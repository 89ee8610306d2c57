using WeldTrace.Web.Features.Vessels.Book;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels;

public static class BookEndpoint
{
    public static void MapBook(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/vessels/{serial}/history.pdf",
            (string serial, HttpContext http, BookReader reader) =>
                http.PrintAsync(
                    (site, actor, token) => reader.PrintAsync(serial, site, actor, token)
                )
        );
}
