using System.Runtime.CompilerServices;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>A file of the repository.</summary>
/// <param name="Path">Path from the top, with slashes.</param>
/// <param name="Text">Its text.</param>
public sealed record SourceFile(string Path, string Text)
{
    public int Lines => Text.AsSpan().TrimEnd('\n').Count('\n') + 1;
}

/// <summary>The repository as the rules about the code read it: without what is built, and without what a tool generates.</summary>
public static class SourceTree
{
    private static readonly string[] Built = ["bin", "obj", ".git", "TestResults", "node_modules"];

    public static string Root { get; } = FindRoot();

    /// <summary>Files below a folder with one of the endings, generated migrations left out.</summary>
    public static IReadOnlyList<SourceFile> Files(string folder, params string[] endings) =>
        [
            .. Walk(Path.Combine(Root, folder))
                .Where(p => endings.Any(e => p.EndsWith(e, StringComparison.Ordinal)))
                .Select(p => Path.GetRelativePath(Root, p).Replace('\\', '/'))
                .Where(p => !p.Contains("/Migrations/2", StringComparison.Ordinal))
                .Where(p => !p.EndsWith("ModelSnapshot.cs", StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(p => new SourceFile(p, File.ReadAllText(Path.Combine(Root, p)))),
        ];

    /// <summary>What breaks a rule, as a message that names each; the rule holds when there is nothing.</summary>
    public static void AssertNone(IEnumerable<string> breaches, string rule) =>
        Assert.True(!breaches.Any(), $"{rule}\n{string.Join('\n', breaches)}");

    private static IEnumerable<string> Walk(string folder) =>
        Directory
            .EnumerateDirectories(folder)
            .Where(d => !Built.Contains(Path.GetFileName(d)))
            .SelectMany(Walk)
            .Concat(Directory.EnumerateFiles(folder));

    private static string FindRoot([CallerFilePath] string here = "")
    {
        var folder = Directory.Exists(Path.GetDirectoryName(here))
            ? here
            : AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "WeldTrace.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder
            ?? throw new InvalidOperationException(
                "No WeldTrace.sln above the test: run it from the repository."
            );
    }
}
