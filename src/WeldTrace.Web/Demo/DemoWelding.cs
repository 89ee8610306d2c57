using System.Text;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Demo;

/// <summary>What goes wrong in an invented run.</summary>
internal enum DemoFault
{
    None,
    Excursion,
    Interruption,
}

/// <summary>Welds passes of the demonstration: through the gate, with an invented log that is read and judged like any other.</summary>
internal sealed class DemoWelding(
    WeldTraceDbContext db,
    DemoWorkshop shop,
    DemoCast cast,
    DemoClock clock
)
{
    private PreparationFacts _prepared = new([], []);

    public async Task<(WeldRun Run, IReadOnlyList<Finding> Findings)> WeldAsync(
        Vessel vessel,
        RouteStep step,
        DemoFault fault,
        CancellationToken cancellation
    )
    {
        var joint = shop.Design.Content.Joint(step.JointCode)!;
        shop.Tools.MakeReady(
            shop.Tools.InUse,
            new ToolTask(joint.Pass(step.PassNumber ?? 0)!.Path, vessel.Serial, joint.Code),
            cast,
            clock
        );
        await PrepareAsync(vessel, joint.Code, cancellation);
        await db.SaveForDemoAsync(cancellation);
        var at = clock.AfterMinutes(25);
        var facts = (
            await db.FindWeldGateFactsAsync(
                vessel.Serial,
                step.Sequence,
                new WeldChoice(shop.Tool.Mark, shop.Machine.Name, cast.Operator, at),
                cancellation
            )
        )!;
        var run = WeldRun
            .Start(Guid.CreateVersion7(at), facts, facts.Pass.Travel, Enum.GetValues<PreWeldItem>())
            .Must();
        db.Add(run);
        await db.SaveForDemoAsync(cancellation);
        List<Finding> opened = [.. Weld(run, vessel, fault)];
        db.AddRange(opened);
        await db.SaveForDemoAsync(cancellation);
        opened.AddRange(await TakeLogAsync(run, facts, fault, cancellation));
        var signed = clock.AfterMinutes(2);
        run.Sign(vessel, cast.Operator, signed).Must();
        db.Add(Signature.Of(run, cast.Operator, "I welded this run as recorded here.", signed));
        await db.SaveForDemoAsync(cancellation);
        return (run, opened);
    }

    /// <summary>Cleans a joint and fits it up, unless that is done and still counts.</summary>
    public async Task PrepareAsync(
        Vessel vessel,
        string jointCode,
        CancellationToken cancellation
    ) =>
        _prepared = await DemoMaterial.MakeReadyAsync(
            db,
            vessel,
            jointCode,
            shop.Procedure.Content,
            _prepared,
            shop.Tools,
            cast,
            clock,
            cancellation
        );

    private IReadOnlyList<Finding> Weld(WeldRun run, Vessel vessel, DemoFault fault)
    {
        if (fault != DemoFault.Interruption)
        {
            run.End(null, shop.Tool, cast.Operator, clock.AfterMinutes(4)).Must();
            return [];
        }

        return
        [
            run.Interrupt(
                    run.PlannedPath * 0.45,
                    "Coolant alarm on the spindle; stopped by hand.",
                    vessel,
                    shop.Tool,
                    cast.Operator,
                    clock.AfterMinutes(2)
                )
                .Must(),
        ];
    }

    private async Task<IReadOnlyList<Finding>> TakeLogAsync(
        WeldRun run,
        WeldGateFacts facts,
        DemoFault fault,
        CancellationToken cancellation
    )
    {
        var csv = new MemoryStream(
            Encoding.UTF8.GetBytes(new DemoLog(Run(run, facts, fault)).ToCsv())
        );
        var preview = await LogPreview.ReadAsync(csv, null, cancellation);
        csv.Position = 0;
        var mapping = preview.Preview!.Guess;
        var read = await ProcessLogReader.ReadAsync(csv, mapping, null, cancellation);
        var log =
            read.Log
            ?? throw new InvalidOperationException(
                string.Join(" ", read.Problems.Select(p => p.Sentence))
            );
        var evaluation = LogEvaluation.Evaluate(
            log,
            RunPlan.For(run, facts.Pass, shop.Procedure.Content)
        );
        var summary = RunSummary.Of(
            FormattableString.Invariant($"{run.VesselSerial}-{run.JointCode}-{run.PassNumber}.csv"),
            log,
            evaluation,
            run,
            shop.Procedure.Content
        );
        var at = clock.AfterMinutes(5);
        var findings = run.TakeLog(
                summary,
                shop.Procedure.Content.Windows,
                facts.Vessel,
                shop.Tool,
                cast.Operator,
                at
            )
            .Must();
        shop.Machine.RememberLogColumns(MachineColumns.ToRemember(mapping), cast.Operator, at);
        db.AddRange(findings);
        db.AddProcessLog(run.Id, log, null);
        await db.KeepRunFiguresAsync(run, shop.Tool, cancellation);
        await db.SaveForDemoAsync(cancellation);
        return findings;
    }

    private static DemoRun Run(WeldRun run, WeldGateFacts facts, DemoFault fault) =>
        new()
        {
            TrackRadius = run.TrackRadius,
            Overlap = run.TrackRadius * facts.Pass.Overlap.Radians,
            Start = facts.Pass.Start,
            Travel = run.Travel,
            PlungeDepth = Length.FromMillimetres(5.7),
            SamplesPerSecond = 50,
            Seed = run.StartedAt.Minute + (run.PassNumber * 100) + run.StepSequence,
            Excursion =
                fault == DemoFault.Excursion
                    ? new DemoExcursion(
                        Angle.FromDegrees(215),
                        Length.FromMillimetres(9),
                        Force.FromKilonewtons(1.6)
                    )
                    : null,
            AbortAt = fault == DemoFault.Interruption ? Angle.FromDegrees(171) : null,
        };
}
