namespace WeldTrace.Web.Security;

/// <summary>Says in plain words what kind of device a browser runs on. What the browser sends of itself is not kept: it tells more than is needed.</summary>
internal static class DeviceWords
{
    private const string Unknown = "device that does not say what it is";

    // The first that is found counts: some name others too, to be taken for them.
    private static readonly (string Mark, string Word)[] Systems =
    [
        ("iPhone", "iPhone"),
        ("iPad", "iPad"),
        ("Android", "Android tablet"),
        ("Windows", "Windows computer"),
        ("Macintosh", "Mac or iPad"),
        ("CrOS", "ChromeOS computer"),
        ("Linux", "Linux computer"),
    ];

    private static readonly (string Mark, string Word)[] Browsers =
    [
        ("Edg", "Edge"),
        ("Firefox/", "Firefox"),
        ("FxiOS/", "Firefox"),
        ("CriOS/", "Chrome"),
        ("Chrome/", "Chrome"),
        ("Safari/", "Safari"),
    ];

    /// <summary>The words for what a browser calls itself.</summary>
    public static string Of(string userAgent)
    {
        var system = Find(Systems, userAgent);
        if (system == "Android tablet" && Has(userAgent, "Mobile"))
        {
            system = "Android phone";
        }

        return (system, Find(Browsers, userAgent)) switch
        {
            (null, null) => Unknown,
            (null, { } browser) => $"{Unknown}, {browser}",
            ({ } known, null) => known,
            ({ } known, { } browser) => $"{known}, {browser}",
        };
    }

    private static string? Find((string Mark, string Word)[] words, string userAgent) =>
        words.FirstOrDefault(w => Has(userAgent, w.Mark)).Word;

    private static bool Has(string userAgent, string mark) =>
        userAgent.Contains(mark, StringComparison.Ordinal);
}
