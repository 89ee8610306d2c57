using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>What was asked for on the command line.</summary>
internal sealed record VerifyArguments(string Bundle, string? Fingerprint)
{
    public static VerifyArguments Read(IReadOnlyList<string> args)
    {
        var rest = args.ToList();
        string? fingerprint = null;
        var option = rest.IndexOf("--key");
        if (option >= 0)
        {
            if (option + 1 >= rest.Count)
            {
                throw new FormatException("--key needs a fingerprint or the name of a PEM file.");
            }
            fingerprint = FingerprintOf(rest[option + 1]);
            rest.RemoveRange(option, 2);
        }
        if (rest.Count != 1 || rest[0].StartsWith('-'))
        {
            throw new FormatException("Name one bundle.");
        }
        return new VerifyArguments(rest[0], fingerprint);
    }

    private static string FingerprintOf(string key)
    {
        var digits = key.Replace(":", "", StringComparison.Ordinal).ToLowerInvariant();
        if (digits.Length == 64 && digits.All(char.IsAsciiHexDigit))
        {
            return digits;
        }
        return File.Exists(key)
            ? SitePublicKey.FromPem(File.ReadAllText(key)).Fingerprint
            : throw new FormatException(
                "--key is neither 64 hexadecimal digits nor the name of a file."
            );
    }
}
