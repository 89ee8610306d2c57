using System.Text.Json;

namespace WeldTrace.Domain.Ledger;

/// <summary>Reads a document and holds it to its one canonical form.</summary>
internal static class CanonicalDocument
{
    public static T Read<T>(
        ReadOnlyMemory<byte> utf8,
        JsonLimits limits,
        Func<JsonElement, T> read,
        Func<T, byte[]> write
    )
    {
        using var document = StrictJson.Parse(utf8, limits);
        try
        {
            var value = read(document.RootElement);
            return write(value).AsSpan().SequenceEqual(utf8.Span)
                ? value
                : throw new FormatException("The text is not in its canonical form.");
        }
        catch (Exception error)
            when (error is InvalidOperationException or KeyNotFoundException or ArgumentException)
        {
            throw new FormatException("A member is missing or wrong: " + error.Message, error);
        }
    }

    public static string Text(this JsonElement json, string name) =>
        json.GetProperty(name).GetString() ?? throw new FormatException($"\"{name}\" is null.");

    public static byte[] Hash(this JsonElement json) =>
        json.GetString() is { Length: 2 * MerkleTree.HashLength } hex
            ? Convert.FromHexString(hex)
            : throw new FormatException("A hash has 64 hexadecimal digits.");
}
