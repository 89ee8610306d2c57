using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Features.People;
using WeldTrace.Web.Features.People.Import;
using WeldTrace.Web.Features.Testing.Logs;
using WeldTrace.Web.Files;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;
using Record = WeldTrace.Domain.Records.Record;

namespace WeldTrace.Web.Tests.Features;

/// <summary>A site that is set up, with people who can sign and the desk at which they act.</summary>
internal sealed class WorkingSite : IAsyncDisposable
{
    public const string Password = "seven quiet anchors";

    private readonly TestFolder _folder = new();
    private readonly IConfiguration _configuration;
    private readonly ServiceProvider _services;
    private readonly AsyncServiceScope _scope;

    private WorkingSite(SiteDatabase database)
    {
        Database = database;
        _configuration = new ConfigurationBuilder()
            .AddInMemoryCollection([new("Database:Folder", _folder.Path)])
            .Build();
        _services = new ServiceCollection()
            .AddLogging()
            .AddSingleton<TimeProvider>(Clock)
            .AddDbContextFactory<WeldTraceDbContext>(options =>
                options.UseWeldTrace(database.ConnectionString)
            )
            .AddSecurity(_configuration)
            // Thousands of signatures are checked here; the strength of the site's own hashes has a test of its own.
            .Configure<PasswordHasherOptions>(options => options.IterationCount = 1_000)
            .AddScoped<ISigningSession, NamedAlready>()
            .AddReading()
            .AddScoped<ActDesk>()
            .BuildServiceProvider();
        _scope = _services.CreateAsyncScope();
    }

    public SiteDatabase Database { get; }

    public FakeTimeProvider Clock { get; } = new(SampleTime.Start.AddHours(1));

    public DateOnly Today => DateOnly.FromDateTime(Clock.GetUtcNow().Date);

    public UserManager<Account> Accounts => Get<UserManager<Account>>();

    public ActDesk Desk => Get<ActDesk>();

    public SiteDay Day => Get<SiteDay>();

    public SiteReader Sites => Get<SiteReader>();

    public StampReader Stamps => Get<StampReader>();

    public PasswordCheck Passwords => Get<PasswordCheck>();

    public ArrivedReadings Arrivals => new(new StagedLogs(_configuration, Clock));

    public PeopleHandler People =>
        new(Database, Get<NewAccount>(), Get<IPasswordHasher<Account>>(), Clock);

    public ImportPeopleHandler ImportPeople => new(Database, Get<NewAccount>(), Clock);

    public static async Task<WorkingSite> OpenAsync(PostgresServerFixture server)
    {
        var site = new WorkingSite(await SiteDatabase.CreateAsync(server));
        await site.Database.AddAsync(
            Accept.Value(
                Site.SetUp(
                    "Test works",
                    "Etc/UTC",
                    UnitSystem.Metric,
                    false,
                    SamplePeople.Engineer,
                    SampleTime.Start
                )
            )
        );
        return site;
    }

    /// <summary>Somebody with an account, who signs with <see cref="Password"/>.</summary>
    public Task<Actor> EnterAsync(string name, params IReadOnlyList<Role> roles) =>
        EnterAsync(SamplePeople.Entered(name, roles));

    /// <summary>The same for a person that other records name already.</summary>
    public async Task<Actor> EnterAsync(Person person)
    {
        await Database.AddAsync(
            person,
            Get<NewAccount>().For(person, Password, mustChangePassword: false)
        );
        return person.AsActor();
    }

    /// <summary>An account alone, for a person whom the records name by identity.</summary>
    public Task GiveAccountAsync(Person person) =>
        Database.AddAsync(Get<NewAccount>().For(person, Password, mustChangePassword: false));

    /// <summary>Changes a record as the domain allows, and saves it.</summary>
    public async Task ChangeAsync<T>(Guid id, Func<T, Outcome> act)
        where T : Record
    {
        await using var db = Database.CreateDbContext();
        Accept.All(act(await db.Set<T>().SingleAsync(r => r.Id == id)));
        Accept.All(await db.SaveAsync(CancellationToken.None));
    }

    public Task<T> ReadAsync<T>(Guid id)
        where T : Record => Database.ReadAsync(db => db.Set<T>().SingleAsync(r => r.Id == id));

    /// <summary>How many papers were handed in and kept.</summary>
    public Task<int> PapersAsync() =>
        Database.ReadAsync(db =>
            db.Attachments.CountAsync(a => a.Sha256 != SamplePapers.CertificateSha256)
        );

    /// <summary>Everything that the ledger says was done to a record, oldest first.</summary>
    public Task<int> EntriesAsync(Guid id) =>
        Database.ReadAsync(db => db.LedgerEntries.CountAsync(e => e.RecordId == id));

    /// <summary>What the whole ledger's check complains of; empty when rows and entries agree.</summary>
    public async Task<IReadOnlyList<string>> LedgerProblemsAsync() =>
        (await Database.ReadAsync(db => db.CheckLedgerAsync(CancellationToken.None))).Problems;

    /// <summary>A small file as a browser hands it in.</summary>
    public static IFormFile Paper(string text = "%PDF-1.7 a report", string name = "report.pdf")
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        return new FormFile(new MemoryStream(bytes), 0, bytes.Length, "In.File", name);
    }

    public static string Text(IEnumerable<Refusal> refusals) =>
        string.Join(
            ' ',
            refusals.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Code}:{r.Field}"))
        );

    public async ValueTask DisposeAsync()
    {
        await _scope.DisposeAsync();
        await _services.DisposeAsync();
        await Database.DisposeAsync();
        _folder.Dispose();
    }

    private T Get<T>()
        where T : notnull => _scope.ServiceProvider.GetRequiredService<T>();
}
