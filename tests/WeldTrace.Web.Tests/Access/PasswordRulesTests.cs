using WeldTrace.Web.Security;

namespace WeldTrace.Web.Tests.Access;

/// <summary>NIST SP 800-63B-4 3.1.1 and OWASP ASVS 5.0, 6.2: long, of any characters, and not among those that are tried first.</summary>
public sealed class PasswordRulesTests
{
    [Theory]
    [InlineData("seven quiet anchors")]
    [InlineData("              a b c d e f")]
    [InlineData("nur kleine buchstaben")]
    [InlineData("海は深く、風は強く、船は白く帰る")]
    [InlineData("92746518340275619")]
    [InlineData("dragon and baseball")]
    [InlineData("monkey9shadow42river")]
    public void Password_LongEnough_OfAnyCharacters_IsTaken(string password) =>
        Assert.Null(PasswordRules.FaultOf(password, "ines"));

    [Fact]
    public void Password_Of64Characters_IsTaken() =>
        Assert.Null(
            PasswordRules.FaultOf(string.Concat(Enumerable.Repeat("deep sea floats ", 4)), "ines")
        );

    [Theory]
    [InlineData("fourteen chars", "14 characters")]
    [InlineData("aaaaaaaaaaaaaaaabbbb", "repeats very few")]
    [InlineData("my name is ines, hello", "sign-in name")]
    [InlineData("Correct Horse Battery Staple", "tried first")]
    [InlineData("WeldTrace of 2026!", "tried first")]
    [InlineData("passwordpassword", "tried first")]
    [InlineData("Password-12345678", "tried first")]
    [InlineData("qwertyuiopasdfgh", "row of the keyboard")]
    [InlineData("1q2w3e4r5t6y7u8i", "row of the keyboard")]
    [InlineData("letmeinletmeinletmein", "tried first")]
    [InlineData("iloveyouiloveyou", "tried first")]
    [InlineData("administratoradministrator", "tried first")]
    [InlineData("changemechangeme", "tried first")]
    [InlineData("welcomewelcome123", "tried first")]
    [InlineData("2026 Michael! 2027 2028", "tried first")]
    [InlineData("Dragon1 Dragon1 Dragon1", "tried first")]
    [InlineData("abc123abc123abc12", "tried first")]
    [InlineData("1qaz2wsx3edc4rfv", "tried first")]
    [InlineData("cdefghijklmnopqrstu", "row of the keyboard")]
    [InlineData("345678901234567890", "row of the keyboard")]
    public void Password_ThatIsGuessedEarly_IsRefused_WithTheReason(
        string password,
        string reason
    ) => Assert.Contains(reason, PasswordRules.FaultOf(password, "ines"), StringComparison.Ordinal);

    /// <summary>OWASP ASVS 5.0, 6.2.4: the top 3000 at least, in the forms in which they get as long as this site asks for.</summary>
    [Fact]
    public void EachOfTheList_Repeated_OrWithDigits_IsRefused()
    {
        var list = ReadList();
        Assert.Equal(list.Count, CommonPassword.Count);
        Assert.True(list.Count >= 3_000);

        var taken = list.SelectMany(p => new[] { p, Repeated(p) })
            .Concat(
                list.Where(p => p.Any(char.IsAsciiLetter))
                    .SelectMany(p =>
                        new[] { Capital(p) + "-1984-1985-1986!", $"20262027{p}20282029" }
                    )
            )
            .Where(p => PasswordRules.FaultOf(p, "ines") is null)
            .ToList();

        Assert.True(taken.Count == 0, string.Join('\n', taken.Take(20)));
    }

    private static List<string> ReadList()
    {
        using var stream = typeof(PasswordRules).Assembly.GetManifestResourceStream(
            "common-passwords.txt"
        )!;
        using StreamReader reader = new(stream);
        return [.. reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries)];
    }

    private static string Repeated(string password) =>
        string.Concat(Enumerable.Repeat(password, (PasswordRules.Shortest / password.Length) + 1));

    private static string Capital(string password) =>
        char.ToUpperInvariant(password[0]) + password[1..];
}
