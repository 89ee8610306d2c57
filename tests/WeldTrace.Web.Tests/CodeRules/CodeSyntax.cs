using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>The syntax of the C# files.</summary>
public static class CodeSyntax
{
    public static SyntaxNode Of(SourceFile file) =>
        CSharpSyntaxTree
            .ParseText(
                file.Text,
                CSharpParseOptions.Default,
                file.Path,
                null,
                TestContext.Current.CancellationToken
            )
            .GetRoot(TestContext.Current.CancellationToken);

    /// <summary>Lines from the first modifier to the closing brace, comments before it not counted.</summary>
    public static int Lines(SyntaxNode node)
    {
        var span = node.GetLocation().GetLineSpan();
        return span.EndLinePosition.Line - span.StartLinePosition.Line + 1;
    }

    public static string Place(SyntaxNode node)
    {
        var span = node.GetLocation().GetLineSpan();
        return $"{span.Path}({span.StartLinePosition.Line + 1})";
    }

    public static bool IsPublic(MemberDeclarationSyntax member) =>
        member.Modifiers.Any(SyntaxKind.PublicKeyword)
        || member is EnumMemberDeclarationSyntax
        || member.Parent is InterfaceDeclarationSyntax;

    public static bool IsVisible(MemberDeclarationSyntax member) =>
        member
            .AncestorsAndSelf()
            .OfType<MemberDeclarationSyntax>()
            .All(m => m is BaseNamespaceDeclarationSyntax || IsPublic(m));

    public static bool HasComment(SyntaxNode node) =>
        node.GetLeadingTrivia()
            .Any(t => t.HasStructure && t.GetStructure() is DocumentationCommentTriviaSyntax);
}
