using System.Security.Cryptography;

namespace WeldTrace.Domain.Ledger;

/// <summary>The public half of a site's key: ECDSA on P-256 with SHA-256, signatures in DER.</summary>
public sealed class SitePublicKey
{
    private const int LongestPem = 4096;
    private readonly byte[] _subjectPublicKeyInfo;

    private SitePublicKey(byte[] subjectPublicKeyInfo) =>
        _subjectPublicKeyInfo = subjectPublicKeyInfo;

    /// <summary>SHA-256 of the SubjectPublicKeyInfo, 64 lower-case hexadecimal digits.</summary>
    public string Fingerprint => Convert.ToHexStringLower(SHA256.HashData(_subjectPublicKeyInfo));

    /// <summary>The key as PEM text ("PUBLIC KEY"), with one line end at its end.</summary>
    public string Pem => PemEncoding.WriteString("PUBLIC KEY", _subjectPublicKeyInfo) + "\n";

    /// <summary>Reads PEM text; only a P-256 key under its name is taken.</summary>
    /// <param name="pem">The text.</param>
    /// <exception cref="FormatException">The text holds no such key.</exception>
    public static SitePublicKey FromPem(string pem)
    {
        ArgumentNullException.ThrowIfNull(pem);
        if (pem.Length > LongestPem || !PemEncoding.TryFind(pem, out var found))
        {
            throw new FormatException("The text is not one PEM key.");
        }
        if (pem.AsSpan()[found.Label] is not "PUBLIC KEY")
        {
            throw new FormatException("The PEM text is not a public key.");
        }
        try
        {
            using var key = ECDsa.Create();
            key.ImportSubjectPublicKeyInfo(
                Convert.FromBase64String(pem[found.Base64Data]),
                out var _
            );
            return Of(key);
        }
        catch (Exception error)
            when (error is CryptographicException or PlatformNotSupportedException)
        {
            throw new FormatException("The PEM text holds no usable key.", error);
        }
    }

    /// <summary>Whether the signature is this key's over the data.</summary>
    /// <param name="data">What was signed.</param>
    /// <param name="signature">DER signature; anything else is simply not valid.</param>
    public bool Verify(ReadOnlySpan<byte> data, ReadOnlySpan<byte> signature)
    {
        using var key = ECDsa.Create();
        key.ImportSubjectPublicKeyInfo(_subjectPublicKeyInfo, out _);
        return key.VerifyData(
            data,
            signature,
            HashAlgorithmName.SHA256,
            DSASignatureFormat.Rfc3279DerSequence
        );
    }

    internal static SitePublicKey Of(ECDsa key)
    {
        var curve = key.ExportParameters(includePrivateParameters: false).Curve;
        return curve.IsNamed && curve.Oid.Value == ECCurve.NamedCurves.nistP256.Oid.Value
            ? new SitePublicKey(key.ExportSubjectPublicKeyInfo())
            : throw new FormatException("The key is not on curve P-256.");
    }
}
