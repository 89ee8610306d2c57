using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>What others compute and decide with says what it is, in which unit, from which source.</summary>
public sealed class DocumentationTests
{
    [Theory]
    [InlineData("src/WeldTrace.Engineering")]
    [InlineData("src/WeldTrace.Domain")]
    public void PublicMembers_AreDocumented(string project) =>
        SourceTree.AssertNone(
            SourceTree
                .Files(project, ".cs")
                .SelectMany(f =>
                    CodeSyntax.Of(f).DescendantNodes().OfType<MemberDeclarationSyntax>()
                )
                .Where(m =>
                    m is not BaseNamespaceDeclarationSyntax
                    && CodeSyntax.IsVisible(m)
                    && !CodeSyntax.HasComment(m)
                )
                .Where(m => !IsFurtherPart(m) && !IsGiven(m))
                .Select(CodeSyntax.Place),
            "Say what these public members are:"
        );

    // A partial type says what it is once.
    private static bool IsFurtherPart(MemberDeclarationSyntax member) =>
        member is TypeDeclarationSyntax type && type.Modifiers.Any(m => m.Text == "partial");

    // What object or the interface of numbers gives needs no words: conversions, operators, equality.
    private static bool IsGiven(MemberDeclarationSyntax member) =>
        member.Modifiers.Any(m => m.Text == "override")
        && member
            is MethodDeclarationSyntax { Identifier.Text: "ToString" or "Equals" or "GetHashCode" };
}
