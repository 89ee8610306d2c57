using Microsoft.Extensions.Logging;
using WeldTrace.Domain.People;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Security;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Requirement R-093 (NIST SP 800-63B 5.2.2, 21 CFR 11.300(d)): misuse of passwords is told, without what was typed.</summary>
public sealed class PasswordLogTests(PostgresServerFixture server)
{
    [Fact]
    public async Task WrongPasswordOrName_IsLogged_WithoutWhatWasTyped()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var person = await site.EnterAsync("Ines Falk", Role.Inspector);
        var log = new Kept();
        var check = new PasswordCheck(
            site.Accounts,
            new NamedAlready(),
            new SecondFactor(site.Accounts, site.Clock),
            site.Clock,
            log
        );

        await check.ForSignatureAsync(person, "typed secret", CancellationToken.None);
        await check.CheckAsync(null, "typed secret", "Wrong.");
        await check.ForSignatureAsync(person, WorkingSite.Password, CancellationToken.None);

        Assert.Equal(
            [
                $"A wrong password was given for person {person.PersonId}: 1 in a row.",
                "A sign-in was refused: no account of that name.",
            ],
            log.Lines
        );
    }

    private sealed class Kept : ILogger<PasswordCheck>
    {
        public List<string> Lines { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel,
            EventId eventId,
            TState state,
            Exception? exception,
            Func<TState, Exception?, string> formatter
        ) => Lines.Add(formatter(state, exception));
    }
}
