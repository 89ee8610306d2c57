namespace WeldTrace.Web.Features.SignIn;

/// <summary>Where a sign-in leads: back to a page of this site, and nowhere else.</summary>
internal static class LocalAddress
{
    /// <summary>The address that was asked for, if it is one of this site; the home page otherwise.</summary>
    public static string Of(string? from) => IsLocal(from) ? from! : Routes.Home;

    /// <summary>A page of signing in that leads to the same address.</summary>
    public static string After(string page, string? from) =>
        IsLocal(from) ? $"{page}?from={Uri.EscapeDataString(from!)}" : page;

    private static bool IsLocal(string? address) =>
        address is ['/', ..]
        && !address.StartsWith("//", StringComparison.Ordinal)
        && !address.Contains('\\', StringComparison.Ordinal)
        // A browser leaves tabs and line ends out of an address, so that "/<tab>/" would become "//".
        && !address.Any(char.IsControl);
}
