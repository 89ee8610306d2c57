using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Reading;

public static class PrintedPaper
{
    /// <summary>Answers with a PDF that is printed for this visitor, or that there is nothing to print.</summary>
    /// <param name="http">The request.</param>
    /// <param name="print">Prints for a site address and a person; null when there is no such record.</param>
    public static async Task<IResult> PrintAsync(
        this HttpContext http,
        Func<Uri, Actor, CancellationToken, Task<byte[]?>> print
    )
    {
        ArgumentNullException.ThrowIfNull(http);
        ArgumentNullException.ThrowIfNull(print);
        var contexts = http.RequestServices.GetRequiredService<
            IDbContextFactory<WeldTraceDbContext>
        >();
        var actor = await CurrentActor.GetAsync(contexts, http.User, http.RequestAborted);
        var pdf = await print(http.SiteAddress(), actor, http.RequestAborted);
        return pdf is null ? Results.NotFound() : Results.File(pdf, "application/pdf");
    }
}
