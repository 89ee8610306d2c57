using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>A type is named by what it is, in the words of the domain; a name that fits everything says nothing.</summary>
public sealed class NameTests
{
    private static readonly string[] Empty =
    [
        "Helper",
        "Helpers",
        "Manager",
        "Util",
        "Utils",
        "Utility",
    ];

    [Fact]
    public void Types_HaveNamesOfTheDomain() =>
        SourceTree.AssertNone(
            new[] { "src", "tests" }
                .SelectMany(folder => SourceTree.Files(folder, ".cs"))
                .SelectMany(f =>
                    CodeSyntax.Of(f).DescendantNodes().OfType<BaseTypeDeclarationSyntax>()
                )
                .Where(t => Empty.Any(e => t.Identifier.Text.EndsWith(e, StringComparison.Ordinal)))
                .Select(t => $"{CodeSyntax.Place(t)}: {t.Identifier.Text}"),
            "Name these types by what they are:"
        );

    [Fact]
    public void Files_HaveNamesOfTheDomain() =>
        SourceTree.AssertNone(
            new[] { "src", "tests" }
                .SelectMany(folder => SourceTree.Files(folder, ".cs", ".razor"))
                .Where(f =>
                    f.Path.Split('/', '.')
                        .Any(part => Empty.Any(e => part.EndsWith(e, StringComparison.Ordinal)))
                )
                .Select(f => f.Path),
            "Name these files and folders by what is in them:"
        );
}
