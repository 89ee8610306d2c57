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
    [InlineData("cdefghijklmnopqrstu", "row of the keyboard")]
    [InlineData("345678901234567890", "row of the keyboard")]
    public void Password_ThatIsGuessedEarly_IsRefused_WithTheReason(
        string password,
        string reason
    ) => Assert.Contains(reason, PasswordRules.FaultOf(password, "ines"), StringComparison.Ordinal);
}
