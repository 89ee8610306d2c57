using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Http.Features;

namespace WeldTrace.Web.Reading;

public static class MissingRecord
{
    /// <summary>
    /// Answers a form sent to a page that shows no such form as the page is answered when it is looked at: that nothing is there, or where
    /// to go on. The framework calls each such form a bad request, and a page whose record is missing shows none. A page that is there
    /// and no longer has the form, since somebody was faster or the button was pressed twice, is a conflict, of which a page tells.
    /// </summary>
    public static IApplicationBuilder UseMissingRecords(this IApplicationBuilder app) =>
        app.Use(
            async (context, next) =>
            {
                await next(context);
                if (!IsFormOfAPage(context) || context.Response.HasStarted)
                {
                    return;
                }

                if (context.Response.StatusCode == StatusCodes.Status400BadRequest)
                {
                    await LookAsync(context, next);
                }

                if (
                    context.Response.StatusCode
                    is StatusCodes.Status404NotFound
                        or StatusCodes.Status409Conflict
                )
                {
                    // Left empty and as if looked at, it is filled with the page that says so.
                    Answer(context.Response, context.Response.StatusCode);
                    context.Request.Method = HttpMethods.Get;
                }
            }
        );

    private static bool IsFormOfAPage(HttpContext context) =>
        HttpMethods.IsPost(context.Request.Method)
        && context.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>() is not null;

    // The page is rendered for its status alone, with services of its own, since each renderer serves one answer.
    private static async Task LookAsync(HttpContext context, RequestDelegate page)
    {
        var body = context.Features.GetRequiredFeature<IHttpResponseBodyFeature>();
        var services = context.RequestServices;
        await using var scope = services.CreateAsyncScope();
        (context.RequestServices, context.Request.Method) = (
            scope.ServiceProvider,
            HttpMethods.Get
        );
        context.Features.Set<IHttpResponseBodyFeature>(new StreamResponseBodyFeature(Stream.Null));
        context.Response.Clear();
        try
        {
            await page(context);
        }
        finally
        {
            (context.RequestServices, context.Request.Method) = (services, HttpMethods.Post);
            context.Features.Set(body);
        }

        if (context.Response.StatusCode == StatusCodes.Status200OK)
        {
            Answer(context.Response, StatusCodes.Status409Conflict);
        }
    }

    private static void Answer(HttpResponse response, int status)
    {
        response.Clear();
        response.StatusCode = status;
    }
}
