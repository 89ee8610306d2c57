namespace WeldTrace.Web.Security;

/// <summary>
/// The signatures given since somebody signed in: the first takes the sign-in name and the password, later ones the password
/// (21 CFR 11.200(a)(1) as a model). Signing out, 30 idle minutes and 12 hours end it.
/// </summary>
public interface ISigningSession
{
    /// <summary>Last part of the posted name of the field for the sign-in name; the first part is that of the form.</summary>
    const string Field = "SignerName";

    /// <summary>Whether the next signature takes the name too.</summary>
    bool AsksForName { get; }

    /// <summary>The name that was sent with the form; null when none was.</summary>
    string? TypedName { get; }

    /// <summary>A signature was given with name and password.</summary>
    void Begin();
}
