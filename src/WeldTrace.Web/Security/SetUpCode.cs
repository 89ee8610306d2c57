using System.Net;
using System.Security.Cryptography;
using System.Text;
using WeldTrace.Persistence.Roles;

namespace WeldTrace.Web.Security;

/// <summary>Keeps a stranger on the network from becoming the first administrator: only who can read the server's files knows it.</summary>
public sealed class SetUpCode(DatabaseSettings settings)
{
    private readonly Lazy<string> _code = new(() => Make(settings.Folder));

    /// <summary>Whether the request comes from this machine itself, which needs no code.</summary>
    public static bool IsLocal(HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        return http.Connection.RemoteIpAddress is { } address
            && IPAddress.IsLoopback(address)
            && !http.Request.Headers.ContainsKey("X-Forwarded-For");
    }

    public bool Matches(string? typed) =>
        CryptographicOperations.FixedTimeEquals(
            SHA256.HashData(Encoding.UTF8.GetBytes(typed?.Trim() ?? "")),
            SHA256.HashData(Encoding.UTF8.GetBytes(_code.Value))
        );

    private static string Make(string folder)
    {
        var file = Path.Combine(folder, "set-up-code");
        if (!File.Exists(file))
        {
            var options = new FileStreamOptions
            {
                Mode = FileMode.CreateNew,
                Access = FileAccess.Write,
                UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
            };
            using var stream = new StreamWriter(file, options);
            stream.Write(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16)));
        }

        return File.ReadAllText(file).Trim();
    }
}
