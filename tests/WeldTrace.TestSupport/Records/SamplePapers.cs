using System.Security.Cryptography;
using WeldTrace.Persistence.Attachments;

namespace WeldTrace.TestSupport.Records;

/// <summary>Papers that sample records name; every <see cref="Database.SiteDatabase"/> has them.</summary>
public static class SamplePapers
{
    private static readonly byte[] _certificate = [.. "%PDF-1.7 inspection certificate"u8];

    /// <summary>Hash of the scanned inspection document of a lot.</summary>
    public static string CertificateSha256 { get; } =
        Convert.ToHexStringLower(SHA256.HashData(_certificate));

    /// <summary>The scanned inspection document of a lot.</summary>
    public static Attachment Certificate() =>
        new()
        {
            Sha256 = CertificateSha256,
            MediaType = "application/pdf",
            Length = _certificate.Length,
            Bytes = _certificate,
        };
}
