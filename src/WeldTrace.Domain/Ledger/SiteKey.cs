using System.Security.Cryptography;

namespace WeldTrace.Domain.Ledger;

/// <summary>The key with which a site signs checkpoints and bundles: ECDSA P-256, SHA-256.</summary>
public sealed class SiteKey : IDisposable
{
    /// <summary>Name of the key's file inside its folder.</summary>
    public const string FileName = "site-key-private.pem";

    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private readonly ECDsa _key;
    private readonly Lock _use = new();

    private SiteKey(ECDsa key)
    {
        _key = key;
        PublicKey = SitePublicKey.Of(key);
    }

    /// <summary>The half that others may have.</summary>
    public SitePublicKey PublicKey { get; }

    /// <summary>SHA-256 of the public key's SubjectPublicKeyInfo, lower-case hexadecimal.</summary>
    public string Fingerprint => PublicKey.Fingerprint;

    /// <summary>Makes a key that lives in memory only.</summary>
    public static SiteKey Create() => new(ECDsa.Create(ECCurve.NamedCurves.nistP256));

    /// <summary>Loads the folder's key, or makes one (file mode 600) if there is none.</summary>
    /// <param name="folder">An existing folder that only the application may read.</param>
    /// <exception cref="InvalidOperationException">The file is damaged, or others may read it.</exception>
    public static SiteKey LoadOrCreate(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        var path = Path.Combine(folder, FileName);
        if (!File.Exists(path))
        {
            Store(path);
        }
        return Load(path);
    }

    /// <summary>Signs the data.</summary>
    /// <param name="data">Any bytes.</param>
    /// <returns>DER signature, as common tools read it; two signatures of one text differ.</returns>
    public byte[] Sign(ReadOnlySpan<byte> data)
    {
        lock (_use)
        {
            return _key.SignData(
                data,
                HashAlgorithmName.SHA256,
                DSASignatureFormat.Rfc3279DerSequence
            );
        }
    }

    /// <summary>Signs a checkpoint's canonical bytes.</summary>
    /// <param name="checkpoint">The state of the ledger.</param>
    public SignedCheckpoint Sign(Checkpoint checkpoint)
    {
        ArgumentNullException.ThrowIfNull(checkpoint);
        return new SignedCheckpoint(checkpoint, Sign(checkpoint.ToCanonicalBytes()));
    }

    /// <summary>Whether the signature is this key's over the data.</summary>
    /// <param name="data">What was signed.</param>
    /// <param name="signature">DER signature.</param>
    public bool Verify(ReadOnlySpan<byte> data, ReadOnlySpan<byte> signature) =>
        PublicKey.Verify(data, signature);

    /// <inheritdoc/>
    public void Dispose() => _key.Dispose();

    // Written whole under another name first: a crash or a second start never leaves half a key.
    internal static void Store(string path)
    {
        var draft = path + "." + Path.GetRandomFileName();
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var options = new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.Write,
        };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = OwnerOnly;
        }
        using (var file = new FileStream(draft, options))
        {
            file.Write(System.Text.Encoding.ASCII.GetBytes(key.ExportPkcs8PrivateKeyPem() + "\n"));
            file.Flush(flushToDisk: true);
        }
        try
        {
            File.Move(draft, path, overwrite: false);
        }
        catch (IOException) when (File.Exists(path))
        {
            File.Delete(draft);
        }
    }

    internal static SiteKey Load(string path)
    {
        if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & ~OwnerOnly) != 0)
        {
            throw new InvalidOperationException(
                $"Others may read the site's key {path}. Run: chmod 600 \"{path}\""
            );
        }
        var key = ECDsa.Create();
        try
        {
            key.ImportFromPem(File.ReadAllText(path));
            return new SiteKey(key);
        }
        catch (Exception error)
            when (error is ArgumentException or CryptographicException or FormatException)
        {
            key.Dispose();
            throw new InvalidOperationException(
                $"The site's key {path} is damaged. Put it back from the backup.",
                error
            );
        }
    }
}
