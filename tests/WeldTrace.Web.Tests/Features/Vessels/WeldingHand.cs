using System.Text;
using Microsoft.Extensions.Configuration;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Features.Welding;
using WeldTrace.Web.Features.Welding.BringLog;
using WeldTrace.Web.Features.Welding.EndRun;
using WeldTrace.Web.Features.Welding.ReadLog;
using WeldTrace.Web.Features.Welding.SignRun;
using WeldTrace.Web.Files;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>Welds runs of a vessel from start to signature through the handlers, each with a log whose samples are kept.</summary>
internal sealed class WeldingHand(RoutedVessel vessel) : IDisposable
{
    private readonly TestFolder _folder = new();
    private readonly LogIntake _intake = new();

    private IConfiguration Configuration =>
        new ConfigurationBuilder()
            .AddInMemoryCollection([new("Database:Folder", _folder.Path)])
            .Build();

    private StagedLogs Staged => new(Configuration, vessel.Site.Clock);

    /// <param name="target">Step, or repair, that is welded.</param>
    /// <param name="pass">Pass of joint J1.</param>
    /// <param name="arc">How far it goes around; null for the whole pass.</param>
    public async Task<Guid> WeldAsync(WeldTarget target, int pass, Angle? arc = null)
    {
        var plan = vessel.Shop.Design.Content.Joint("J1")!.Pass(pass)!;
        var id = Guid.CreateVersion7(vessel.Site.Clock.GetUtcNow());
        Accept.All(
            await new StartRunHandler(vessel.Site.Database, vessel.Site.Clock).HandleAsync(
                target,
                new()
                {
                    Id = id,
                    Tool = vessel.Shop.Tool.Mark,
                    Machine = vessel.Shop.Machine.Name,
                    Travel = plan.Travel,
                    JointPreparation = true,
                    FitUp = true,
                    Parameters = true,
                },
                SamplePeople.Operator,
                CancellationToken.None
            )
        );
        vessel.Site.Clock.Advance(TimeSpan.FromMinutes(4));
        Accept.All(
            await new EndRunHandler(vessel.Site.Database, vessel.Site.Clock).HandleAsync(
                id,
                new EndRunForm(),
                SamplePeople.Operator,
                CancellationToken.None
            )
        );
        await BringLogAsync(
            id,
            new DemoRun
            {
                TrackRadius = plan.TrackRadius,
                Overlap = plan.TrackRadius * plan.Overlap.Radians,
                Travel = plan.Travel,
                AbortAt = arc,
                SamplesPerSecond = 20,
            }
        );
        Accept.All(
            await new SignRunHandler(
                vessel.Site.Database,
                vessel.Site.Passwords,
                vessel.Site.Clock
            ).HandleAsync(
                id,
                new SignRunForm { Password = WorkingSite.Password },
                SamplePeople.Operator,
                CancellationToken.None
            )
        );
        return id;
    }

    private async Task BringLogAsync(Guid run, DemoRun motion)
    {
        var file = Encoding.UTF8.GetBytes(new DemoLog(motion).ToCsv());
        var kept = Accept.Value(
            await new LogUploadHandler(vessel.Site.Database, Staged).HandleAsync(
                run,
                "run.csv",
                new MemoryStream(file),
                file.Length,
                SamplePeople.Operator,
                CancellationToken.None
            )
        );
        ReadLogHandler reading = new(
            vessel.Site.Database,
            Staged,
            new ArrivedLogs(Configuration, vessel.Site.Clock),
            _intake,
            new SignalWatch(vessel.Site.Database),
            vessel.Site.Clock
        );
        var view = (await reading.FindAsync(run, kept.Id, CancellationToken.None))!;
        var read = await reading.HandleAsync(
            run,
            kept.Id,
            new()
            {
                IsNewMapping = view.Remembered is null,
                Columns =
                [
                    .. view.Preview!.Guess.Columns.Select(c => new ReadLogColumn
                    {
                        Channel = c.Channel.ToString(),
                        Unit = c.Unit,
                        Factor = FormattableString.Invariant($"{c.Factor}"),
                    }),
                ],
            },
            SamplePeople.Operator,
            CancellationToken.None
        );
        Accept.All(read.Outcome);
    }

    public void Dispose()
    {
        _intake.Dispose();
        _folder.Dispose();
    }
}
