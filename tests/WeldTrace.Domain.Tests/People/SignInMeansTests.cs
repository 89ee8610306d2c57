using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.People;

/// <summary>Who may change the means by which somebody signs in, and which digits are a PIN.</summary>
public sealed class SignInMeansTests
{
    private static readonly Actor Administrator = new(
        Guid.Parse("00000000-0000-0000-0000-0000000000ad"),
        "Ines Vidal",
        [Role.Administrator]
    );

    [Theory]
    [InlineData(SignInMeans.SecondFactorSetUp, "own", "own", "own")]
    [InlineData(SignInMeans.PasskeyRemoved, "own", "own", "own")]
    [InlineData(SignInMeans.PinSet, "own", "own", "own")]
    [InlineData(SignInMeans.PinErased, "own", "own", "own")]
    [InlineData(SignInMeans.Reset, "role", "role", "")]
    [InlineData(SignInMeans.SessionsEnded, "role", "role", "")]
    [InlineData(SignInMeans.BadgeMade, "role", "", "")]
    [InlineData(SignInMeans.BadgeWithdrawn, "role", "", "")]
    public void Change_OfSomebodyElse_IsForItsRole(
        SignInMeans change,
        string byEngineer,
        string byQuality,
        string byAdministrator
    )
    {
        Assert.Equal(byEngineer, Refused(change, SamplePeople.Engineer));
        Assert.Equal(byQuality, Refused(change, SamplePeople.QualityManager));
        Assert.Equal(byAdministrator, Refused(change, Administrator));
    }

    [Theory]
    [InlineData(SignInMeans.Reset)]
    [InlineData(SignInMeans.SessionsEnded)]
    [InlineData(SignInMeans.BadgeWithdrawn)]
    public void Change_OfSomebodyElse_HasAReason(SignInMeans change) =>
        Assert.Equal("missing", Refused(change, Administrator, " "));

    /// <summary>A PIN is too weak for what an administrator may do.</summary>
    [Fact]
    public void Pin_OfAnAdministrator_IsRefused()
    {
        var person = SamplePeople.Entered("Ines Vidal", Role.Administrator);

        var outcome = person.ChangeSignInMeans(
            SignInMeans.PinSet,
            "Tablet",
            person.AsActor(),
            SampleTime.Start
        );

        Assert.Equal("administrator", Assert.Single(outcome.Refusals).Code);
    }

    [Theory]
    [InlineData("482913", true)]
    [InlineData("482913570246", true)]
    [InlineData("48291", false)]
    [InlineData("4829135702461", false)]
    [InlineData("48291a", false)]
    [InlineData("٤٨٢٩١٣", false)]
    [InlineData("111111", false)]
    [InlineData("121212", false)]
    [InlineData("123456", false)]
    [InlineData("987654", false)]
    [InlineData("123457", true)]
    public void Pin_HasSixDigitsOrMore_ThatAreNotGuessedAtOnce(string pin, bool isGood) =>
        Assert.Equal(isGood, PinRules.FaultOf(pin) is null);

    private static string Refused(SignInMeans change, Actor by, string reason = "lost") =>
        string.Join(
            ' ',
            SamplePeople
                .Entered("Cem Aydin", Role.Operator)
                .ChangeSignInMeans(change, reason, by, SampleTime.Start)
                .Refusals.Select(r => r.Code)
        );
}
