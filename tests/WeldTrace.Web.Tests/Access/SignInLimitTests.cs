using System.Net;
using Microsoft.Extensions.Time.Testing;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Tests.Access;

/// <summary>OWASP ASVS 5.0, 6.3.1: guessing is slow from one place, and nobody elsewhere notices. The numbers are our own choice.</summary>
public sealed class SignInLimitTests
{
    private static readonly IPAddress Workshop = IPAddress.Parse("192.0.2.7");

    private readonly FakeTimeProvider _clock = new(
        new DateTimeOffset(2031, 5, 20, 6, 0, 0, TimeSpan.Zero)
    );
    private readonly SignInLimit _limit;

    public SignInLimitTests() => _limit = new SignInLimit(_clock);

    [Fact]
    public void WrongOnes_UpToTheMost_AreLookedAt_AndNoMore()
    {
        for (var i = 0; i < SignInLimit.MostWrong; i++)
        {
            Assert.True(_limit.TryEnter(Workshop));
        }

        Assert.False(_limit.TryEnter(Workshop));
        Assert.True(_limit.TryEnter(IPAddress.Parse("192.0.2.8")));
        Assert.True(_limit.TryEnter(null));
    }

    [Fact]
    public void WrongOnes_CountForTheirWindow()
    {
        Fill(Workshop);
        _clock.Advance(SignInLimit.Window - TimeSpan.FromSeconds(1));
        Assert.False(_limit.TryEnter(Workshop));

        _clock.Advance(TimeSpan.FromSeconds(1));

        Assert.True(_limit.TryEnter(Workshop));
    }

    [Fact]
    public void OnesThatWereRefused_DoNotLengthenTheWait()
    {
        Fill(Workshop);
        for (var i = 0; i < 10; i++)
        {
            _clock.Advance(SignInLimit.Window / 20);
            Assert.False(_limit.TryEnter(Workshop));
        }

        _clock.Advance(SignInLimit.Window / 2);

        Assert.True(_limit.TryEnter(Workshop));
    }

    [Fact]
    public void RightOnes_DoNotCount_AndDoNotClearTheWrongOnes()
    {
        for (var i = 0; i < SignInLimit.MostWrong * 3; i++)
        {
            Assert.True(_limit.TryEnter(Workshop));
            _limit.WasRight(Workshop);
        }

        Fill(Workshop);

        Assert.False(_limit.TryEnter(Workshop));
    }

    [Theory]
    [InlineData("2001:db8:1:2::1", "2001:db8:1:2:ffff::9", false)]
    [InlineData("2001:db8:1:2::1", "2001:db8:1:3::1", true)]
    [InlineData("192.0.2.7", "::ffff:192.0.2.7", false)]
    [InlineData("192.0.2.7", "::ffff:192.0.2.8", true)]
    public void Addresses_OfOneSubscriber_CountTogether(
        string guesser,
        string other,
        bool isElsewhere
    )
    {
        Fill(IPAddress.Parse(guesser));

        Assert.Equal(isElsewhere, _limit.TryEnter(IPAddress.Parse(other)));
    }

    private void Fill(IPAddress address)
    {
        for (var i = 0; i < SignInLimit.MostWrong; i++)
        {
            _limit.TryEnter(address);
        }
    }
}
