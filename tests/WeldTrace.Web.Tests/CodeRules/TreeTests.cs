namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>What lies in the repository, and what must not stand in it.</summary>
public sealed class TreeTests
{
    private static readonly string[] Top =
    [
        "DEVELOPERS.md",
        "Directory.Build.props",
        "Directory.Packages.props",
        "LICENSE",
        "README.md",
        "WeldTrace.sln",
        "deploy",
        "docker-compose.yml",
        "global.json",
        "src",
        "tests",
    ];

    // Written in parts, so that this file is not what it looks for.
    private static readonly string[] Strange =
    [
        "/wo" + "rk/",
        "/sr" + "v/",
        "/ro" + "ot/",
        "/ho" + "me/",
        "api.nu" + "get.org",
        "registry.np" + "mjs",
        "deb.deb" + "ian.org",
    ];

    [Fact]
    public void Top_HasWhatANewcomerLooksFor()
    {
        var there = Directory
            .EnumerateFileSystemEntries(SourceTree.Root)
            .Select(p => Path.GetFileName(p)!)
            .Where(n => !n.StartsWith('.') && n is not ("bin" or "obj" or "TestResults"))
            .Order(StringComparer.Ordinal);

        Assert.Equal(Top.Order(StringComparer.Ordinal), there);
    }

    [Fact]
    public void Files_NameNoMachineAndNoRegistry() =>
        SourceTree.AssertNone(
            new[] { "src", "tests", "deploy", ".github", ".config" }
                .SelectMany(folder =>
                    SourceTree.Files(
                        folder,
                        ".cs",
                        ".razor",
                        ".csproj",
                        ".md",
                        ".sh",
                        ".yml",
                        ".json",
                        ".css",
                        ".js",
                        ".conf",
                        ".env",
                        ".service",
                        ".csv",
                        ".txt"
                    )
                )
                .SelectMany(f =>
                    Strange
                        .Where(s => f.Text.Contains(s, StringComparison.Ordinal))
                        .Select(s => $"{f.Path}: {s}")
                ),
            "A path of one machine, or the address of a package registry, doesn't belong into the repository:"
        );
}
