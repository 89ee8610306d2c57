namespace WeldTrace.Web.Features.SignIn;

public sealed class SignInForm
{
    public string? Name { get; set; }

    public string? Password { get; set; }

    /// <summary>Code of the second factor, for whoever has set one up.</summary>
    public string? Code { get; set; }
}

public sealed class PasskeySignInForm
{
    /// <summary>The browser's answer to the challenge, as JSON.</summary>
    public string? Credential { get; set; }
}
