using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Time.Testing;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;
using WeldTrace.Persistence;
using WeldTrace.ProcessLogs;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding;
using WeldTrace.Web.Features.Welding.BringLog;
using WeldTrace.Web.Features.Welding.EndRun;
using WeldTrace.Web.Features.Welding.ReadLog;
using WeldTrace.Web.Files;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Tests.Features.Welding;

/// <summary>A shop that is ready to weld: released design and procedure, tool in service, machine, planned vessel.</summary>
internal sealed class WeldShop : IAsyncDisposable
{
    private readonly TestFolder _folder = new();

    private WeldShop(SiteDatabase database) => Database = database;

    public SiteDatabase Database { get; }

    public FakeTimeProvider Clock { get; } = new(SampleTime.Start.AddHours(1));

    public required Tool Tool { get; init; }

    public required Machine Machine { get; init; }

    public required Vessel Vessel { get; init; }

    public required VesselDesign Design { get; init; }

    public IConfiguration Configuration =>
        new ConfigurationBuilder()
            .AddInMemoryCollection([new("Database:Folder", _folder.Path)])
            .Build();

    public StagedLogs Staged => new(Configuration, Clock);

    public ArrivedLogs Arrivals => field ??= new(Configuration, Clock);

    /// <summary>Everything that lies in the folder of brought files.</summary>
    public IReadOnlyList<string> StagedFiles =>
        Directory.GetFiles(Path.Combine(_folder.Path, "uploads"));

    public LogIntake Intake { get; } = new();

    public long MostPlainBytes { get; set; } = long.MaxValue;

    public long MostPackedBytes { get; set; } = long.MaxValue;

    public ReadLogHandler ReadLog =>
        new(Database, Staged, Arrivals, Intake, new SignalWatch(Database), Clock)
        {
            MostPlainBytes = MostPlainBytes,
            MostPackedBytes = MostPackedBytes,
        };

    public static async Task<WeldShop> OpenAsync(
        PostgresServerFixture server,
        double toolLifeMetres = 40,
        DesignContent? content = null
    )
    {
        var toolDesign = SampleTools.Design(lifeMetres: toolLifeMetres);
        var design = SampleDesigns.Released(content: content);
        var lot = SampleMaterial.Lot();
        var shop = new WeldShop(await SiteDatabase.CreateAsync(server))
        {
            Tool = SampleTools.InService(toolDesign),
            Machine = SampleMachines.Entered(),
            Vessel = SampleVessels.Planned(design, lot),
            Design = design,
        };
        await shop.Database.AddAsync(
            toolDesign,
            design,
            lot,
            SampleProcedures.Released(toolDesign),
            shop.Tool,
            shop.Machine,
            shop.Vessel,
            SampleCertificates.Welder(SamplePeople.Welders[0]),
            SampleCertificates.Welder(SamplePeople.Welders[1])
        );
        return shop;
    }

    public StartRunForm StartForm(RotationSense? travel = RotationSense.CounterClockwise) =>
        new()
        {
            Id = Guid.CreateVersion7(Clock.GetUtcNow()),
            Tool = Tool.Mark,
            Machine = Machine.Name,
            Travel = travel,
            JointPreparation = true,
            FitUp = true,
            Parameters = true,
        };

    public Task<Outcome> StartAsync(StartRunForm form, Actor? actor = null, int step = 10) =>
        new StartRunHandler(Database, Clock).HandleAsync(
            new(Vessel.Serial, step),
            form,
            actor ?? SamplePeople.Operator,
            CancellationToken.None
        );

    /// <summary>Starts the run of step 10.</summary>
    public async Task<Guid> StartedAsync()
    {
        var form = StartForm();
        Accept.All(await StartAsync(form));
        return form.Id;
    }

    /// <summary>Starts and ends the run of step 10.</summary>
    public async Task<Guid> EndedAsync()
    {
        var id = await StartedAsync();
        await EndAsync(id);
        return id;
    }

    /// <summary>Welds step 10 of further vessels, each with a tool of its own, up to the logs.</summary>
    public async Task<IReadOnlyList<Guid>> EndedAsync(int vessels)
    {
        var (lot, toolDesign) = await Database.ReadAsync(async db =>
            (await db.MaterialLots.SingleAsync(), await db.ToolDesigns.SingleAsync())
        );
        List<Guid> runs = [];
        for (var number = 1; number <= vessels; number++)
        {
            var vessel = SampleVessels.Planned(Design, lot, $"{Vessel.Serial}-{number}");
            var tool = SampleTools.InService(toolDesign, $"{Tool.Mark}-{number}");
            await Database.AddAsync(vessel, tool);
            var form = StartForm();
            form.Tool = tool.Mark;
            Accept.All(
                await new StartRunHandler(Database, Clock).HandleAsync(
                    new(vessel.Serial, 10),
                    form,
                    SamplePeople.Operator,
                    CancellationToken.None
                )
            );
            await EndAsync(form.Id);
            runs.Add(form.Id);
        }

        return runs;
    }

    private async Task EndAsync(Guid run)
    {
        Clock.Advance(TimeSpan.FromMinutes(4));
        Accept.All(
            await new EndRunHandler(Database, Clock).HandleAsync(
                run,
                new EndRunForm(),
                SamplePeople.Operator,
                CancellationToken.None
            )
        );
    }

    /// <summary>Brings a file and takes it, mapping its columns as guessed.</summary>
    public async Task<ReadLogResult> BringAsync(
        Guid run,
        byte[] file,
        string name = "run.csv",
        Action<ReadLogForm>? edit = null
    )
    {
        var upload = await UploadAsync(run, file, name);
        return await TakeAsync(run, upload, edit);
    }

    public async Task<Guid> UploadAsync(Guid run, byte[] file, string name = "run.csv")
    {
        var kept = await new LogUploadHandler(Database, Staged).HandleAsync(
            run,
            name,
            new MemoryStream(file),
            file.Length,
            SamplePeople.Operator,
            CancellationToken.None
        );
        return Accept.Value(kept).Id;
    }

    public async Task<ReadLogResult> TakeAsync(
        Guid run,
        Guid upload,
        Action<ReadLogForm>? edit = null,
        Actor? actor = null
    )
    {
        var view = await ReadLog.FindAsync(run, upload, CancellationToken.None);
        var form = new ReadLogForm { IsNewMapping = view!.Remembered is null };
        if (view.Preview is { } preview)
        {
            form.Columns =
            [
                .. preview.Guess.Columns.Select(c => new ReadLogColumn
                {
                    Channel = c.Channel.ToString(),
                    Unit = c.Unit,
                    Factor = FormattableString.Invariant($"{c.Factor}"),
                }),
            ];
        }

        edit?.Invoke(form);
        return await ReadLog.HandleAsync(
            run,
            upload,
            form,
            actor ?? SamplePeople.Operator,
            CancellationToken.None
        );
    }

    /// <summary>Lets the machine remember the columns of its logs, as from an earlier run.</summary>
    public async Task RememberAsync()
    {
        using var good = new MemoryStream(SampleLogs.Good());
        var looked = await LogPreview.ReadAsync(good);
        await using var db = Database.CreateDbContext();
        db.Machines.Single()
            .RememberLogColumns(
                MachineColumns.ToRemember(looked.Preview!.Guess),
                SamplePeople.Operator,
                Clock.GetUtcNow()
            );
        Accept.All(await db.SaveAsync(CancellationToken.None));
    }

    public Task<WeldRun> RunAsync(Guid id) =>
        Database.ReadAsync(db => Task.FromResult(db.WeldRuns.Single(r => r.Id == id)));

    public Task<Vessel> VesselNowAsync() =>
        Database.ReadAsync(db => Task.FromResult(db.Vessels.Single(v => v.Id == Vessel.Id)));

    public Task<Tool> ToolNowAsync() =>
        Database.ReadAsync(db => Task.FromResult(db.Tools.Single(t => t.Id == Tool.Id)));

    public async ValueTask DisposeAsync()
    {
        await Database.DisposeAsync();
        Intake.Dispose();
        _folder.Dispose();
    }
}
