namespace WeldTrace.Web.Security;

/// <summary>
/// A cookie whose name begins with "__Host-" over HTTPS: no other host of the domain and no plain connection can set it (RFC 6265bis
/// 4.1.3.2; OWASP ASVS 5.0, 3.3.3). Over plain HTTP, as on the machine itself, browsers take no cookie of such a name.
/// </summary>
internal sealed class HostCookie : CookieBuilder
{
    private const string Prefix = "__Host-";
    private readonly IHttpContextAccessor _http;

    public HostCookie(string name, IHttpContextAccessor http)
    {
        _http = http;
        Name = name;
        Path = "/";
        HttpOnly = true;
        IsEssential = true;
        SameSite = SameSiteMode.Strict;
        SecurePolicy = CookieSecurePolicy.SameAsRequest;
    }

    public override string? Name
    {
        get => _http.HttpContext?.Request.IsHttps is true ? Prefix + base.Name : base.Name;
        set => base.Name = value;
    }
}
