using System.Security.Cryptography;
using System.Text;
using Microsoft.Net.Http.Headers;

namespace WeldTrace.Web.Security;

/// <summary>The word by which a machine or another system proves itself: shown once, and kept as its hash.</summary>
public static class TokenWord
{
    private const string Bearer = "Bearer ";
    private const int Bytes = 32;

    /// <summary>A new word: 256 random bits, in letters and digits.</summary>
    public static string New() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>The form in which it is kept; a word of 256 random bits needs no slow hash.</summary>
    public static string HashOf(string word) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(word)));

    /// <summary>The hash of the word that came with a request; null when none came.</summary>
    internal static string? HashFrom(HttpRequest request)
    {
        var header = request.Headers[HeaderNames.Authorization].ToString();
        return header.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase)
            ? HashOf(header[Bearer.Length..].Trim())
            : null;
    }
}
