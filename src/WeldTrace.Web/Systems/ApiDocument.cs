using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace WeldTrace.Web.Systems;

/// <summary>The OpenAPI document of what machines and other systems may ask.</summary>
internal static class ApiDocument
{
    public const string Address = "/api/openapi.json";

    private const string Scheme = "token";

    public static IServiceCollection AddApiDocument(this IServiceCollection services) =>
        services.AddOpenApi(options =>
        {
            options.ShouldInclude = description =>
                $"/{description.RelativePath}" is var path
                && (
                    path.StartsWith("/api/", StringComparison.Ordinal)
                    || path.StartsWith("/equipment/machines/{id", StringComparison.Ordinal)
                );
            options.AddDocumentTransformer(DescribeAsync);
        });

    private static Task DescribeAsync(
        OpenApiDocument document,
        OpenApiDocumentTransformerContext context,
        CancellationToken cancellation
    )
    {
        document.Info.Title = "WeldTrace for machines and other systems";
        document.Info.Description =
            "Every request names its token in the header Authorization: Bearer TOKEN. Refusals are problem details (RFC 9457) in plain words.";
        document.Components ??= new();
        document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
        {
            [Scheme] = new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                Description = "A token from the page of a machine or of the systems.",
            },
        };
        document.Security =
        [
            new OpenApiSecurityRequirement
            {
                [new OpenApiSecuritySchemeReference(Scheme, document)] = [],
            },
        ];
        return Task.CompletedTask;
    }
}
