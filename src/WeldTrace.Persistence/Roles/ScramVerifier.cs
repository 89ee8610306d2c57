using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace WeldTrace.Persistence.Roles;

/// <summary>
/// The form in which PostgreSQL stores a SCRAM-SHA-256 password (RFC 5803), made here so that the password itself is
/// never part of a statement that a server might log.
/// </summary>
public static class ScramVerifier
{
    private const int Iterations = 4096;

    /// <param name="password">ASCII characters only, which need no SASLprep.</param>
    public static string Create(string password) =>
        Create(password, RandomNumberGenerator.GetBytes(16));

    public static string Create(string password, byte[] salt)
    {
        var salted = Rfc2898DeriveBytes.Pbkdf2(
            password,
            salt,
            Iterations,
            HashAlgorithmName.SHA256,
            32
        );
        var storedKey = SHA256.HashData(
            HMACSHA256.HashData(salted, Encoding.ASCII.GetBytes("Client Key"))
        );
        var serverKey = HMACSHA256.HashData(salted, Encoding.ASCII.GetBytes("Server Key"));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"SCRAM-SHA-256${Iterations}:{Convert.ToBase64String(salt)}${Convert.ToBase64String(storedKey)}:{Convert.ToBase64String(serverKey)}"
        );
    }
}
