using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.Web.Features.Welding.ReviewSignal;

namespace WeldTrace.Web.Demo;

/// <summary>The engineer has looked into the force of the run with the excursion; the other signals wait.</summary>
internal static class DemoSignal
{
    public static async Task ReviewAsync(
        WeldTraceDbContext db,
        ReviewSignalReader signals,
        string serial,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        var run = await db.WeldRuns.SingleAsync(
            r => r.VesselSerial == serial && r.JointCode == "J1" && r.PassNumber == 2,
            cancellation
        );
        var view = await signals.FindAsync(
            run.Id,
            WeldParameter.AxialForce,
            new RunFigureFilter(null, null, null),
            cancellation
        );
        var at = clock.AfterMinutes(5);
        db.Add(
            SignalReview
                .Record(
                    Guid.CreateVersion7(at),
                    view!.Run,
                    view.Seen,
                    SignalConclusion.CauseFound,
                    "The mean is lifted by the excursion alone: a clamp of the backing ring had yielded. It was replaced before the next run, and the force has been steady since.",
                    view.Findings.First(f => f.EvidenceId == run.Id),
                    cast.Engineer,
                    at
                )
                .Must()
        );
        await db.SaveForDemoAsync(cancellation);
    }
}
