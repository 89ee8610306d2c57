using System.Security.Cryptography;

namespace WeldTrace.Persistence.PrivateServer;

/// <summary>Passwords that the application makes for itself and keeps in its data folder.</summary>
internal static class Passwords
{
    /// <summary>Reads the password, or makes one of 256 random bits where there is none yet.</summary>
    public static string ReadOrCreate(string file)
    {
        if (ReadIfKept(file) is { } kept)
        {
            return kept;
        }

        var made = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
        PrivateFile.Write(file, made);
        return made;
    }

    public static string Read(string file) => ReadIfKept(file) ?? throw Lost(file);

    public static DatabaseStartException Lost(string place, Exception? cause = null) =>
        new(
            DatabaseStartProblem.PasswordLost,
            "The password of the database's owner is missing or not the one of this database",
            place,
            "Put the file db-password back from a backup of this data folder, or restore the whole backup into an empty folder.",
            cause
        );

    private static string? ReadIfKept(string file) =>
        File.Exists(file) && File.ReadAllText(file).Trim() is { Length: > 0 } kept ? kept : null;
}
