using System.Text;

namespace WeldTrace.Domain.Ledger;

/// <summary>The JSON object that an entry carries.</summary>
internal static class RecordContent
{
    public static string Canonical(string text, string name)
    {
        try
        {
            var canonical = CanonicalJson.FromText(text);
            return canonical[0] == (byte)'{'
                ? Encoding.UTF8.GetString(canonical)
                : throw new ArgumentException("The content must be a JSON object.", name);
        }
        catch (CanonicalJsonException error)
        {
            throw new ArgumentException("The content is not strict JSON.", name, error);
        }
    }
}
