namespace WeldTrace.Web.Security;

/// <summary>
/// The signatures given since somebody signed in: the first takes the sign-in name and the password, later ones the password
/// (21 CFR 11.200(a)(1) as a model). Signing out, 30 idle minutes and 12 hours end it.
/// </summary>
public interface ISigningSession
{
    /// <summary>Last part of the posted name of the field for the sign-in name; the first part is that of the form.</summary>
    const string Field = "SignerName";

    /// <summary>The same of the field for the code of the second factor.</summary>
    const string CodeField = "SignerCode";

    /// <summary>The same of the field that a passkey's proof comes in.</summary>
    const string PasskeyField = "SignerPasskey";

    /// <summary>Whether the next signature takes the name too.</summary>
    bool AsksForName { get; }

    /// <summary>The name that was sent with the form; null when none was.</summary>
    string? TypedName { get; }

    /// <summary>Whether the next signature takes the code of the second factor too.</summary>
    bool AsksForCode { get; }

    /// <summary>Whether the person has a passkey to sign with.</summary>
    bool HasPasskey { get; }

    /// <summary>The code that was sent with the form; null when none was.</summary>
    string? TypedCode { get; }

    /// <summary>Whom the passkey sent with the form proves; null when none was sent.</summary>
    Task<PasskeyProof?> PasskeyAsync();

    /// <summary>A signature was given with name and password.</summary>
    Task BeginAsync();
}

/// <summary>What a passkey proved.</summary>
/// <param name="PersonId">Whose it is; null when it proved nothing.</param>
public sealed record PasskeyProof(Guid? PersonId);
