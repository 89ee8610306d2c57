using System.Text.Json;
using System.Text.Json.Nodes;

namespace WeldTrace.Domain.Ledger;

/// <summary>What a history bundle holds: every file but the manifest and its signature.</summary>
public sealed record BundleManifest
{
    private const string Format = "weldtrace-history-bundle";

    /// <summary>Newest version of the bundle's form.</summary>
    public const int NewestVersion = 3;

    /// <summary>Version of the bundle's form: from 2 it holds <see cref="BundlePaths.Events"/> and <see cref="BundlePaths.Lineage"/>, from 3 <see cref="BundlePaths.BundleSchema"/>, <see cref="BundlePaths.Compliance"/> and <see cref="BundlePaths.ComplianceTable"/>.</summary>
    public int Version
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(value, 1, nameof(Version));
            ArgumentOutOfRangeException.ThrowIfGreaterThan(value, NewestVersion, nameof(Version));
            field = value;
        }
    } = NewestVersion;

    /// <summary>Serial number of the vessel; one line, 1 to 100 characters.</summary>
    public required string VesselSerial
    {
        get;
        init => field = LedgerText.Line(value, 100, nameof(VesselSerial));
    }

    /// <summary>The vessel, as ledger entries name it.</summary>
    public required Guid VesselId { get; init; }

    /// <summary>Name of the site; one line, 1 to 200 characters.</summary>
    public required string SiteName
    {
        get;
        init => field = LedgerText.Line(value, 200, nameof(SiteName));
    }

    /// <summary>When the bundle was made, in UTC, cut to whole microseconds.</summary>
    public required DateTimeOffset MadeAt
    {
        get;
        init => field = LedgerTime.Normalise(value);
    }

    /// <summary>The files in ordinal order of their paths, each once.</summary>
    /// <exception cref="ArgumentException">A path stands twice.</exception>
    public required IReadOnlyList<BundleFile> Files
    {
        get;
        init => field = BundleFile.Listed(value, nameof(Files));
    }

    /// <summary>The manifest as canonical JSON.</summary>
    public byte[] ToCanonicalBytes() =>
        CanonicalJson.FromNode(
            new JsonObject
            {
                ["format"] = Format,
                ["version"] = Version,
                ["vesselSerial"] = VesselSerial,
                ["vesselId"] = VesselId.ToString("D"),
                ["site"] = SiteName,
                ["madeAt"] = LedgerTime.Print(MadeAt),
                ["files"] = new JsonArray([.. Files.Select(file => file.ToNode())]),
            }
        );

    /// <summary>Reads what <see cref="ToCanonicalBytes"/> wrote, and nothing else.</summary>
    /// <param name="utf8">Canonical bytes.</param>
    /// <exception cref="FormatException">Any other form or version.</exception>
    public static BundleManifest FromCanonicalBytes(ReadOnlyMemory<byte> utf8) =>
        CanonicalDocument.Read(
            utf8,
            JsonLimits.ForRecords,
            Read,
            manifest => manifest.ToCanonicalBytes()
        );

    private static BundleManifest Read(JsonElement json) =>
        new()
        {
            Version = json.GetProperty("version").GetInt32(),
            VesselSerial = json.Text("vesselSerial"),
            VesselId = json.GetProperty("vesselId").GetGuid(),
            SiteName = json.Text("site"),
            MadeAt = LedgerTime.Read(json.Text("madeAt")),
            Files = [.. json.GetProperty("files").EnumerateArray().Select(BundleFile.Read)],
        };
}
