using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>Nothing grows past what one reads in a few minutes: DEVELOPERS.md, "Sizes".</summary>
public sealed class SizeTests
{
    private const int LongestFile = 300;
    private const int LongestMarkup = 170;
    private const int LongestMethod = 60;

    [Fact]
    public void CodeFiles_StayWithin300Lines() =>
        SourceTree.AssertNone(
            new[] { "src", "tests" }
                .SelectMany(folder => SourceTree.Files(folder, ".cs"))
                .Where(f => f.Lines > LongestFile)
                .Select(f => $"{f.Path}: {f.Lines} lines"),
            $"Split by subject what is longer than {LongestFile} lines:"
        );

    [Fact]
    public void Markup_StaysWithin170Lines() =>
        SourceTree.AssertNone(
            SourceTree
                .Files("src", ".razor")
                .Where(f => f.Lines > LongestMarkup)
                .Select(f => $"{f.Path}: {f.Lines} lines"),
            $"Take components out of markup longer than {LongestMarkup} lines:"
        );

    [Fact]
    public void Methods_StayWithin60Lines() =>
        SourceTree.AssertNone(
            SourceTree
                .Files("src", ".cs")
                .SelectMany(f => CodeSyntax.Of(f).DescendantNodes())
                .Where(n =>
                    n
                        is BaseMethodDeclarationSyntax
                            or AccessorDeclarationSyntax
                            or LocalFunctionStatementSyntax
                )
                .Where(n => CodeSyntax.Lines(n) > LongestMethod)
                .Select(n => $"{CodeSyntax.Place(n)}: {CodeSyntax.Lines(n)} lines"),
            $"Split the methods longer than {LongestMethod} lines:"
        );
}
