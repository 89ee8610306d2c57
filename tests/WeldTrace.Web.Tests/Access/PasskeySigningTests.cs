using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Security;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Passkeys at a signature: whose counts, and wrong ones are held up as wrong passwords are.</summary>
public sealed class PasskeySigningTests(PostgresServerFixture server)
{
    private static readonly Guid Stranger = Guid.Parse("00000000-0000-0000-0000-0000000000ee");

    [Fact]
    public async Task WrongPasskeys_AreHeldUp_TogetherWithPasswords_AndARightOneEndsThat()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        var ada = await works.EnterAsync("Ada Voss", Role.Operator);

        for (var i = 0; i < 4; i++)
        {
            // Somebody else's, and one that proves nothing.
            Assert.Equal("passkey", await SignAsync(works, ada, i % 2 == 0 ? Stranger : null));
        }

        Assert.Equal("delay", await SignAsync(works, ada, ada.PersonId));
        Assert.Equal(
            "delay",
            Code(
                await works.Passwords.ForSignatureAsync(
                    ada,
                    WorkingSite.Password,
                    TestContext.Current.CancellationToken
                )
            )
        );
        works.Clock.Advance(TimeSpan.FromSeconds(2));
        Assert.Equal("", await SignAsync(works, ada, ada.PersonId));
        Assert.Equal(
            (0, null),
            await works.Database.ReadAsync(async db =>
            {
                var account = await db.Users.SingleAsync();
                return (account.AccessFailedCount, account.LockoutEnd);
            })
        );
    }

    [Fact]
    public async Task Passkey_OfSomebodyWithoutAnAccount_SignsNothing()
    {
        await using var works = await WorkingSite.OpenAsync(server);

        Assert.Equal(
            "passkey",
            await SignAsync(works, SamplePeople.Operator, SamplePeople.Operator.PersonId)
        );
    }

    private static async Task<string> SignAsync(WorkingSite works, Actor actor, Guid? proved)
    {
        PasswordCheck check = new(
            works.Accounts,
            new ShownPasskey(proved),
            new SecondFactor(works.Accounts, works.Clock),
            works.Clock,
            NullLogger<PasswordCheck>.Instance
        );
        return Code(
            await check.ForSignatureAsync(actor, null, TestContext.Current.CancellationToken)
        );
    }

    private static string Code(Outcome outcome) => outcome.Refusals.SingleOrDefault()?.Code ?? "";

    private sealed class ShownPasskey(Guid? proved) : ISigningSession
    {
        public bool AsksForName => false;

        public bool AsksForCode => false;

        public bool HasPasskey => true;

        public string? TypedName => null;

        public string? TypedCode => null;

        public Task<PasskeyProof?> PasskeyAsync() =>
            Task.FromResult<PasskeyProof?>(new PasskeyProof(proved));

        public Task BeginAsync() => Task.CompletedTask;
    }
}
