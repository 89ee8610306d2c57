using System.Buffers;
using System.Globalization;
using System.Text;

namespace WeldTrace.Domain.Ledger;

/// <summary>Writes the pieces of canonical JSON; the order of members is the caller's duty.</summary>
internal sealed class CanonicalJsonWriter
{
    private static readonly UTF8Encoding Strict = new(false, throwOnInvalidBytes: true);
    private readonly ArrayBufferWriter<byte> _bytes = new();

    public byte[] ToArray() => _bytes.WrittenSpan.ToArray();

    public void Raw(ReadOnlySpan<byte> utf8) => _bytes.Write(utf8);

    public void Raw(string ascii) => Encoding.ASCII.GetBytes(ascii, _bytes);

    public void String(string value)
    {
        Raw("\""u8);
        try
        {
            WriteEscaped(value);
        }
        catch (EncoderFallbackException error)
        {
            throw new CanonicalJsonException("A string holds half of a surrogate pair.", error);
        }
        Raw("\""u8);
    }

    public void NullableString(string? value)
    {
        if (value is null)
        {
            Raw("null"u8);
        }
        else
        {
            String(value);
        }
    }

    private void WriteEscaped(string value)
    {
        var start = 0;
        for (var i = 0; i < value.Length; i++)
        {
            if (value[i] >= ' ' && value[i] != '"' && value[i] != '\\')
            {
                continue;
            }
            Strict.GetBytes(value.AsSpan(start, i - start), _bytes);
            Raw(Escape(value[i]));
            start = i + 1;
        }
        Strict.GetBytes(value.AsSpan(start), _bytes);
    }

    private static string Escape(char value) =>
        value switch
        {
            '"' => "\\\"",
            '\\' => "\\\\",
            '\b' => "\\b",
            '\t' => "\\t",
            '\n' => "\\n",
            '\f' => "\\f",
            '\r' => "\\r",
            _ => "\\u" + ((int)value).ToString("x4", CultureInfo.InvariantCulture),
        };
}
