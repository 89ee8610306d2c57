namespace WeldTrace.Web.Reading;

public static class SiteAddressReading
{
    /// <summary>The address of the site as this visitor reaches it; the setting <c>PublicAddress</c> comes first.</summary>
    public static Uri SiteAddress(this HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        var configured = http.RequestServices.GetRequiredService<IConfiguration>()["PublicAddress"];
        return Uri.TryCreate(configured, UriKind.Absolute, out var address)
            ? address
            : new Uri($"{http.Request.Scheme}://{http.Request.Host}");
    }
}
