using Microsoft.AspNetCore.Diagnostics;

namespace WeldTrace.Web.Security;

public static class ErrorPages
{
    /// <summary>Shows a page for what fails and for what is not there, whether it was asked for or a form was sent to it.</summary>
    public static IApplicationBuilder UseErrorPages(this IApplicationBuilder app) =>
        app.UseExceptionHandler("/failure", createScopeForErrors: true)
            .UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true)
            .Use(
                (context, next) =>
                {
                    // The page in place of another has no form of that name, and would answer that the form is unknown.
                    if (
                        context.Features.Get<IExceptionHandlerFeature>() is not null
                        || context.Features.Get<IStatusCodeReExecuteFeature>() is not null
                    )
                    {
                        context.Request.Method = HttpMethods.Get;
                    }

                    return next(context);
                }
            );
}
