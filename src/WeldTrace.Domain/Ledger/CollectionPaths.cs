using System.Globalization;

namespace WeldTrace.Domain.Ledger;

/// <summary>Where things stand inside a collection of history bundles.</summary>
public static class CollectionPaths
{
    /// <summary>The list of all other files; a bundle of one vessel has none of this name.</summary>
    public const string Contents = "contents.json";

    /// <summary>The site's signature over the list.</summary>
    public const string ContentsSignature = "contents.sig";

    /// <summary>The site's public key.</summary>
    public const string SiteKey = BundlePaths.SiteKey;

    /// <summary>The JSON Schema of the list.</summary>
    public const string Schema = BundlePaths.BundleSchema;

    /// <summary>How to check the collection.</summary>
    public const string Instructions = BundlePaths.Instructions;

    /// <summary>Folder of the bundles, with its slash.</summary>
    public const string Bundles = "bundles/";

    // A serial has up to 100 characters, some of them no good in names of files; the number keeps names apart.
    private const int LongestSerial = 80;

    /// <summary>Path of the bundle of a vessel.</summary>
    /// <param name="number">Place in the collection, from 1.</param>
    /// <param name="serial">Serial number of the vessel.</param>
    public static string Bundle(int number, string serial)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(number);
        ArgumentException.ThrowIfNullOrWhiteSpace(serial);
        var safe = string.Concat(
            serial
                .Take(LongestSerial)
                .Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.' ? c : '-')
        );
        return string.Create(CultureInfo.InvariantCulture, $"{Bundles}{number:D4}-{safe}.zip");
    }
}
