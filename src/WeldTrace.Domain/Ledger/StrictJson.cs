using System.Text;
using System.Text.Json;

namespace WeldTrace.Domain.Ledger;

/// <summary>Reads JSON text that may be hostile.</summary>
public static class StrictJson
{
    private static readonly UTF8Encoding Utf8 = new(false, throwOnInvalidBytes: true);

    /// <summary>Reads the text; comments, trailing commas and duplicate names are refused.</summary>
    /// <param name="utf8">The text, without a byte order mark.</param>
    /// <param name="limits">Largest size and depth.</param>
    /// <exception cref="CanonicalJsonException">The text is not strict JSON or breaks a limit.</exception>
    public static JsonDocument Parse(ReadOnlyMemory<byte> utf8, JsonLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        if (utf8.Length > limits.MaximumBytes)
        {
            throw new CanonicalJsonException(
                $"The JSON text has {utf8.Length} bytes; at most {limits.MaximumBytes} are read."
            );
        }
        try
        {
            // Refuses invalid UTF-8 everywhere; the reader looks only at strings that are fetched.
            _ = Utf8.GetCharCount(utf8.Span);
            return JsonDocument.Parse(
                utf8,
                new JsonDocumentOptions
                {
                    MaxDepth = limits.MaximumDepth,
                    AllowDuplicateProperties = false,
                }
            );
        }
        catch (Exception error)
            when (error is JsonException or DecoderFallbackException or InvalidOperationException)
        {
            throw new CanonicalJsonException("Not strict JSON: " + error.Message, error);
        }
    }

    internal static byte[] ToUtf8(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        try
        {
            return Utf8.GetBytes(text);
        }
        catch (EncoderFallbackException error)
        {
            throw new CanonicalJsonException("The text holds half of a surrogate pair.", error);
        }
    }
}
