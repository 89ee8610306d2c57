using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Tests;

/// <summary>A site with accounts, so that handlers which ask for a password can be tested on the real database.</summary>
internal sealed class SigningDesk : IAsyncDisposable
{
    public const string Password = "seven quiet anchors";

    private readonly TestFolder _folder = new();
    private readonly ServiceProvider _services;
    private readonly AsyncServiceScope _scope;
    private int _people;

    private SigningDesk(SiteDatabase database)
    {
        Database = database;
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection([new("Database:Folder", _folder.Path)])
            .Build();
        _services = new ServiceCollection()
            .AddLogging()
            .AddSingleton<TimeProvider>(Clock)
            .AddDbContextFactory<WeldTraceDbContext>(options =>
                options.UseWeldTrace(database.ConnectionString)
            )
            .AddSecurity(configuration)
            .AddReading()
            .BuildServiceProvider();
        _scope = _services.CreateAsyncScope();
    }

    public SiteDatabase Database { get; }

    public FakeTimeProvider Clock { get; } = new(SampleTime.Start.AddHours(1));

    public PasswordCheck Passwords => _scope.ServiceProvider.GetRequiredService<PasswordCheck>();

    public SiteReader Sites => _scope.ServiceProvider.GetRequiredService<SiteReader>();

    public SiteDay Day => _scope.ServiceProvider.GetRequiredService<SiteDay>();

    public static async Task<SigningDesk> OpenAsync(PostgresServerFixture server)
    {
        var desk = new SigningDesk(await SiteDatabase.CreateAsync(server));
        await desk.Database.AddAsync(
            Accept.Value(
                Site.SetUp(
                    "Test bench",
                    "Europe/Oslo",
                    UnitSystem.Metric,
                    false,
                    SamplePeople.QualityManager,
                    SampleTime.Start
                )
            )
        );
        return desk;
    }

    /// <summary>Enters a person with an account of the common password.</summary>
    public async Task<Actor> EnterAsync(params IReadOnlyList<Role> roles)
    {
        var name = FormattableString.Invariant($"person{++_people}");
        var person = Accept.Value(Person.Enter(name, name, roles, null, Clock.GetUtcNow()));
        var accounts = _scope.ServiceProvider.GetRequiredService<NewAccount>();
        await Database.AddAsync(person, accounts.For(person, Password, mustChangePassword: false));
        return person.AsActor();
    }

    public async ValueTask DisposeAsync()
    {
        await _scope.DisposeAsync();
        await _services.DisposeAsync();
        await Database.DisposeAsync();
        _folder.Dispose();
    }
}
