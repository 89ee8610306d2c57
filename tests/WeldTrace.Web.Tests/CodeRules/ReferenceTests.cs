using System.Xml.Linq;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>The references between the projects go one way: DEVELOPERS.md, "Map".</summary>
public sealed class ReferenceTests
{
    /// <summary>Every project below src with the projects that it may know.</summary>
    public static TheoryData<string, string> Allowed =>
        new()
        {
            { "Engineering", "" },
            { "Domain", "Engineering" },
            { "ProcessLogs", "Domain Engineering" },
            { "Persistence", "Domain Engineering ProcessLogs" },
            { "Documents", "Domain Engineering" },
            { "Verify", "Domain" },
            { "Web", "Documents Domain Engineering Persistence ProcessLogs Verify" },
        };

    [Theory]
    [MemberData(nameof(Allowed))]
    public void Project_KnowsOnlyWhatLiesBelow(string project, string allowed) =>
        Assert.Subset(
            allowed
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Select(p => $"WeldTrace.{p}")
                .ToHashSet(),
            Items(project, "ProjectReference")
                .Select(p => Path.GetFileNameWithoutExtension(p)!)
                .ToHashSet()
        );

    [Fact]
    public void Projects_AreAllInTheTable() =>
        Assert.Equal(
            SourceTree
                .Files("src", ".csproj")
                .Select(f => Path.GetFileNameWithoutExtension(f.Path)!["WeldTrace.".Length..]),
            Allowed.Select(row => row.Data.Item1).Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Engineering_HasOnePackage() =>
        Assert.Equal(["MathNet.Numerics"], Items("Engineering", "PackageReference"));

    [Fact]
    public void Domain_HasNoPackages() => Assert.Empty(Items("Domain", "PackageReference"));

    [Fact]
    public void Verifier_HasNoPackages() => Assert.Empty(Items("Verify", "PackageReference"));

    /// <summary>A version stands once, in Directory.Packages.props.</summary>
    [Fact]
    public void Projects_WriteNoVersions() =>
        SourceTree.AssertNone(
            new[] { "src", "tests" }
                .SelectMany(folder => SourceTree.Files(folder, ".csproj"))
                .Where(f =>
                    XDocument
                        .Parse(f.Text)
                        .Descendants("PackageReference")
                        .Any(p => p.Attribute("Version") is not null)
                )
                .Select(f => f.Path),
            "Write the version of a package in Directory.Packages.props alone:"
        );

    /// <summary>Every package is named with its licence, so that nobody has to look it up.</summary>
    [Fact]
    public void Packages_StandInDevelopersWithTheirLicence()
    {
        var papers = File.ReadAllText(Path.Combine(SourceTree.Root, "DEVELOPERS.md"));
        SourceTree.AssertNone(
            XDocument
                .Load(Path.Combine(SourceTree.Root, "Directory.Packages.props"))
                .Descendants("PackageVersion")
                .Select(p => p.Attribute("Include")!.Value)
                .Where(p => !papers.Contains(Family(p), StringComparison.Ordinal)),
            "Name these packages with their licences in DEVELOPERS.md:"
        );
    }

    // A family of packages is named once.
    private static string Family(string package) =>
        package switch
        {
            "Npgsql.EntityFrameworkCore.PostgreSQL" => "its EF Core provider",
            _ when package.StartsWith("Microsoft.EntityFrameworkCore", StringComparison.Ordinal) =>
                "EF Core",
            _ when package.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal) =>
                "ASP.NET Core",
            _ when package.StartsWith("SkiaSharp", StringComparison.Ordinal) => "SkiaSharp",
            _ when package.StartsWith("Testcontainers", StringComparison.Ordinal) =>
                "Testcontainers",
            _ when package.StartsWith("xunit.v3", StringComparison.Ordinal) => "xunit.v3",
            "Microsoft.CodeAnalysis.BannedApiAnalyzers" => "BannedApiAnalyzers",
            _ => package,
        };

    private static IReadOnlyList<string> Items(string project, string item) =>
        [
            .. XDocument
                .Load(
                    Path.Combine(
                        SourceTree.Root,
                        "src",
                        $"WeldTrace.{project}",
                        $"WeldTrace.{project}.csproj"
                    )
                )
                .Descendants(item)
                .Select(i => i.Attribute("Include")!.Value),
        ];
}
