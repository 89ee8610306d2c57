namespace WeldTrace.Web.Layout;

/// <summary>One link of the top bar.</summary>
/// <param name="Noun">The word shown.</param>
/// <param name="Path">Where it leads; every address below it counts as the same place.</param>
public sealed record SiteLink(string Noun, string Path)
{
    /// <summary>Every place of the application, in the usual order.</summary>
    public static IReadOnlyList<SiteLink> All { get; } =
    [
        new("Vessels", "/vessels"),
        new("Procedures", "/procedures"),
        new("Tools", "/tools"),
        new("Tests", "/tests"),
        new("Findings", "/findings"),
        new("Equipment", "/equipment"),
        new("People", "/people"),
        new("Ledger", "/ledger"),
    ];

    /// <summary>Whether an address lies at or below this link.</summary>
    public bool Holds(string path) =>
        path.Equals(Path, StringComparison.OrdinalIgnoreCase)
        || path.StartsWith(Path + "/", StringComparison.OrdinalIgnoreCase);
}
