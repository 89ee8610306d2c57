using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace WeldTrace.Domain.Ledger;

/// <summary>
/// Canonical JSON (RFC 8785): one text, and so one hash, for one value. Duplicate member names,
/// halves of surrogate pairs, NaN, infinities and integers that a double cannot hold are refused.
/// A number whose written digits matter (a gauge reading "12.50") goes in as a string.
/// </summary>
public static class CanonicalJson
{
    private static readonly JsonSerializerOptions Camel = new(JsonSerializerDefaults.Web);

    /// <summary>Canonical bytes of JSON text.</summary>
    /// <param name="utf8">The text, without a byte order mark.</param>
    /// <param name="limits">Largest size and depth; those for records if left out.</param>
    /// <exception cref="CanonicalJsonException">The text is not strict JSON or breaks a limit.</exception>
    public static byte[] FromText(ReadOnlyMemory<byte> utf8, JsonLimits? limits = null)
    {
        using var document = StrictJson.Parse(utf8, limits ?? JsonLimits.ForRecords);
        return CanonicalTree.Write(document.RootElement);
    }

    /// <summary>Canonical bytes of JSON text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="limits">Largest size and depth; those for records if left out.</param>
    /// <exception cref="CanonicalJsonException">The text is not strict JSON or breaks a limit.</exception>
    public static byte[] FromText(string text, JsonLimits? limits = null) =>
        FromText(StrictJson.ToUtf8(text), limits);

    /// <summary>Canonical bytes of a node; a null node is JSON null.</summary>
    /// <param name="node">The value.</param>
    /// <exception cref="CanonicalJsonException">The value has no canonical form.</exception>
    public static byte[] FromNode(JsonNode? node) => CanonicalTree.Write(node);

    /// <summary>Canonical bytes of an object as the serializer sees it.</summary>
    /// <param name="value">The object; its runtime type decides what is written.</param>
    /// <param name="options">How to serialize; camel-case names if left out.</param>
    /// <exception cref="CanonicalJsonException">The value has no canonical form.</exception>
    public static byte[] FromObject(object? value, JsonSerializerOptions? options = null)
    {
        try
        {
            var strict = StrictTextConverter.AddTo(options ?? Camel);
            return FromText(JsonSerializer.SerializeToUtf8Bytes(value, strict));
        }
        catch (Exception error) when (error is JsonException or ArgumentException)
        {
            throw new CanonicalJsonException("The object has no canonical JSON form.", error);
        }
    }

    /// <summary>Canonical text of an object, as <see cref="FromObject"/>.</summary>
    /// <param name="value">The object; its runtime type decides what is written.</param>
    /// <param name="options">How to serialize; camel-case names if left out.</param>
    /// <exception cref="CanonicalJsonException">The value has no canonical form.</exception>
    public static string TextOf(object? value, JsonSerializerOptions? options = null) =>
        Encoding.UTF8.GetString(FromObject(value, options));

    /// <summary>Whether the text is strict JSON, within the limits, and already canonical.</summary>
    /// <param name="utf8">The text.</param>
    /// <param name="limits">Largest size and depth; those for records if left out.</param>
    public static bool IsCanonical(ReadOnlyMemory<byte> utf8, JsonLimits? limits = null)
    {
        try
        {
            return FromText(utf8, limits).AsSpan().SequenceEqual(utf8.Span);
        }
        catch (CanonicalJsonException)
        {
            return false;
        }
    }
}
