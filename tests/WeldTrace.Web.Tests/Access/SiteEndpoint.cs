using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;

namespace WeldTrace.Web.Tests.Access;

/// <summary>An address that the application answers at.</summary>
/// <param name="Pattern">As mapped, without the kinds of its parameters.</param>
/// <param name="Methods">Those that it answers; all, when none is named.</param>
/// <param name="IsOpen">Whether it is marked as open to everyone.</param>
/// <param name="IsFile">Whether it is a file of the program, such as a style sheet.</param>
internal sealed partial record SiteEndpoint(
    string Pattern,
    IReadOnlyList<string> Methods,
    bool IsOpen,
    bool IsFile
)
{
    public static IReadOnlyList<SiteEndpoint> AllOf(DemoSite site) =>
        [
            .. site
                .Services.GetRequiredService<EndpointDataSource>()
                .Endpoints.OfType<RouteEndpoint>()
                .Select(Of),
        ];

    private static SiteEndpoint Of(RouteEndpoint endpoint) =>
        new(
            Kind().Replace(endpoint.RoutePattern.RawText ?? "", "}"),
            endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? [],
            endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null,
            endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is not null
        );

    // "{Id:guid}" reads as "{Id}".
    [GeneratedRegex(@":[a-z]+\}")]
    private static partial Regex Kind();
}
