using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>Every address stands once in <see cref="Routes"/>; no page invents one, and none leads nowhere.</summary>
public sealed partial class RouteTests
{
    /// <summary>Addresses that only the framework leads to.</summary>
    private static readonly string[] ByTheFramework = ["/not-found", "/not-allowed", "/failure"];

    private static readonly IReadOnlyList<string> Pages =
    [
        .. typeof(Routes)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetCustomAttributes<RouteAttribute>())
            .Select(r => r.Template),
    ];

    [Fact]
    public void Pages_HaveAddressesOfTheirOwn() =>
        SourceTree.AssertNone(
            Pages
                .Select(Shape)
                .GroupBy(p => p)
                .Where(g => g.Count() > 1)
                .Select(g => $"{g.Key}: {g.Count()} pages"),
            "Two pages have the same address:"
        );

    [Fact]
    public void Pages_AllStandInRoutes() =>
        SourceTree.AssertNone(
            Pages.Where(p =>
                !ByTheFramework.Contains(p) && Addresses.All(a => Shape(a) != Shape(p))
            ),
            "Give these pages a member of Routes:"
        );

    /// <summary>An address of Routes is that of a page, or of an endpoint that is mapped by it.</summary>
    [Fact]
    public void Routes_AllLeadSomewhere()
    {
        var mapped = string.Concat(
            SourceTree
                .Files("src/WeldTrace.Web", ".cs")
                .Where(f => f.Text.Contains(".Map", StringComparison.Ordinal))
                .Select(f => f.Text)
        );
        SourceTree.AssertNone(
            Members
                .Where(m => Pages.All(p => Shape(p) != Shape(m.Address.Split('?')[0])))
                .Where(m => !IsMapped(m.Name, m.Address, mapped))
                .Select(m => $"{m.Name}: {m.Address}"),
            "These addresses lead nowhere:"
        );
    }

    /// <summary>Markup and code ask Routes for an address instead of writing it again.</summary>
    [Fact]
    public void Links_AreNotWrittenAgain() =>
        SourceTree.AssertNone(
            SourceTree
                .Files("src/WeldTrace.Web", ".razor")
                .SelectMany(f => WrittenLink().Matches(f.Text).Select(m => $"{f.Path}: {m.Value}")),
            "Ask Routes for these addresses:"
        );

    private static IEnumerable<string> Addresses => Members.Select(m => m.Address.Split('?')[0]);

    private static IEnumerable<(string Name, string Address)> Members =>
        typeof(Routes)
            .GetFields()
            .Select(f => (f.Name, (string)f.GetValue(null)!))
            .Concat(
                typeof(Routes)
                    .GetMethods(BindingFlags.Public | BindingFlags.Static)
                    .Select(m =>
                        (m.Name, (string)m.Invoke(null, [.. m.GetParameters().Select(Sample)])!)
                    )
            );

    private static object Sample(ParameterInfo parameter) =>
        parameter.ParameterType switch
        {
            var t when t == typeof(Guid) => Guid.Empty,
            var t when t == typeof(int) => 4711,
            var t when t == typeof(long) => 4711L,
            var t when t.IsEnum => Enum.GetValues(t).GetValue(0)!,
            _ => "SAMPLE",
        };

    // "/tools/{Id:guid}" and "/tools/00000000-..." have the same shape.
    private static string Shape(string address) =>
        string.Join(
            '/',
            address
                .Split('/')
                .Select(part =>
                    part.StartsWith('{')
                    || part is "SAMPLE" or "4711"
                    || Guid.TryParse(part, CultureInfo.InvariantCulture, out _)
                        ? "*"
                        : part
                )
        );

    private static bool IsMapped(string name, string address, string mapped) =>
        mapped.Contains($"Routes.{name}", StringComparison.Ordinal)
        || WrittenRoute()
            .Matches(mapped)
            .Any(m => Shape(m.Groups[1].Value) == Shape(address.Split('?')[0]));

    [GeneratedRegex("""\.Map\w*\(\s*"(/[^"]*)" """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex WrittenRoute();

    [GeneratedRegex(
        """(?:href|action)="/(?!_|css|js|lib|fonts|img)[a-z][^"]*" """,
        RegexOptions.IgnorePatternWhitespace
    )]
    private static partial Regex WrittenLink();
}
