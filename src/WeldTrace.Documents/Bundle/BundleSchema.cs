namespace WeldTrace.Documents.Bundle;

/// <summary>
/// The JSON Schema (draft 2020-12) of what stands beside the records: manifest, ledger, compliance matrix, the list of a collection, and the answer of the
/// HTTP interface. These are written member by member, so the file beside this class is too; tests hold it to what is written.
/// </summary>
public static class BundleSchema
{
    /// <summary>The published file, as it goes into each bundle and each collection.</summary>
    public static byte[] Published() => Read("bundle.schema.json");

    internal static byte[] Read(string name)
    {
        using var file = typeof(BundleSchema).Assembly.GetManifestResourceStream(name)!;
        using var copy = new MemoryStream();
        file.CopyTo(copy);
        return copy.ToArray();
    }
}
