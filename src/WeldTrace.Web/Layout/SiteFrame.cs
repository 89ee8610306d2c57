namespace WeldTrace.Web.Layout;

/// <summary>What the frame around every page says: the site, where one may go, and who is here. Cascaded by the application.</summary>
public sealed record SiteFrame
{
    /// <summary>The workshop's own name.</summary>
    public required string SiteName { get; init; }

    /// <summary>The links of the top bar, in order; a role may see fewer.</summary>
    public IReadOnlyList<SiteLink> Links { get; init; } = SiteLink.All;

    /// <summary>Printed name of the person signed in; null for a visitor.</summary>
    public string? PersonName { get; init; }

    /// <summary>Where the sign-out form posts to.</summary>
    public string SignOutPath { get; init; } = "/sign-out";

    /// <summary>Where the next person takes over; null on a device that is no shared tablet.</summary>
    public string? ChangePersonPath { get; init; }

    /// <summary>Whether the records on show are invented.</summary>
    public bool IsDemonstration { get; init; }
}
