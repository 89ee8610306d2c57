namespace WeldTrace.Domain.Ledger;

/// <summary>The folder that holds the site's key, and during a change of key the next one beside it.</summary>
/// <param name="folder">An existing folder that only the application may read.</param>
public sealed class SiteKeyFolder(string folder)
{
    /// <summary>Name of the file that holds the key that is to come.</summary>
    public const string NextFileName = "site-key-next.pem";

    private volatile SiteKey _current = SiteKey.LoadOrCreate(folder);

    /// <summary>The key that signs now.</summary>
    public SiteKey Current => _current;

    /// <summary>Makes a new key aside; it signs nothing until it is taken.</summary>
    /// <returns>Its public half.</returns>
    /// <exception cref="IOException">The folder can't be written.</exception>
    public SitePublicKey PrepareNext()
    {
        File.Delete(Next);
        SiteKey.Store(Next);
        using var next = SiteKey.Load(Next);
        return next.PublicKey;
    }

    /// <summary>Puts the key made aside in the place of the current one, whose private half is gone then.</summary>
    /// <param name="fingerprint">Fingerprint of the key that is on record as the one in use.</param>
    /// <returns>Whether the current key is the one asked for, now or already before.</returns>
    public bool Take(string fingerprint)
    {
        if (_current.Fingerprint == fingerprint)
        {
            return true;
        }

        if (!File.Exists(Next))
        {
            return false;
        }

        var next = SiteKey.Load(Next);
        if (next.Fingerprint != fingerprint)
        {
            next.Dispose();
            return false;
        }

        File.Move(Next, Path.Combine(folder, SiteKey.FileName), overwrite: true);
        _current = next;
        return true;
    }

    private string Next => Path.Combine(folder, NextFileName);
}
