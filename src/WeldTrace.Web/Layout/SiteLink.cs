namespace WeldTrace.Web.Layout;

/// <summary>One link of the top bar.</summary>
/// <param name="Noun">The word shown.</param>
/// <param name="Path">Where it leads; every address below it counts as the same place.</param>
public sealed record SiteLink(string Noun, string Path)
{
    /// <summary>Every place of the application, in the usual order.</summary>
    public static IReadOnlyList<SiteLink> All { get; } =
    [
        new("Vessels", "/vessels")
        {
            Also = ["/designs", "/lots", "/concessions", "/trace", "/histories"],
        },
        new("Procedures", "/procedures"),
        new("Tools", "/tools"),
        new("Tests", "/tests"),
        new("Findings", "/findings"),
        new("Equipment", "/equipment"),
        new("People", "/people"),
        new("Ledger", "/ledger"),
    ];

    /// <summary>Other addresses of the same place.</summary>
    public IReadOnlyList<string> Also { get; init; } = [];

    /// <summary>Whether an address lies at or below this link, or belongs to its place.</summary>
    public bool Holds(string path) => IsBelow(Path, path) || Also.Any(a => IsBelow(a, path));

    private static bool IsBelow(string place, string path) =>
        path.Equals(place, StringComparison.OrdinalIgnoreCase)
        || path.StartsWith(place + "/", StringComparison.OrdinalIgnoreCase);
}
