using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Demo;

/// <summary>What the invented workshop has before it welds: machine, tools, material, procedure and design.</summary>
internal sealed record DemoWorkshop(
    Machine Machine,
    DemoTools Tools,
    ProcedureRevision Procedure,
    VesselDesign Design,
    DemoMaterial Material,
    DemoExaminer Examiner,
    DemoInstruments Instruments
)
{
    /// <summary>The tool that welds the vessels.</summary>
    public Tool Tool => Tools.InUse;

    public static async Task<DemoWorkshop> SetUpAsync(
        WeldTraceDbContext db,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        var machine = DemoMachines.Gantry(cast, clock);
        var tools = DemoTools.Make(cast, clock);
        var material = DemoMaterial.Make(
            await db.LimitTables.SingleAsync(t => t.Code == ShippedLimits.Minima, cancellation),
            cast,
            clock
        );
        db.AddRange([
            machine,
            DemoMachines.Bench(cast, clock),
            .. tools.Records,
            .. material.Papers,
            .. material.Lots,
            material.Cheap,
        ]);
        await db.SaveForDemoAsync(cancellation);
        var instruments = DemoInstruments.Make(cast, clock);
        db.AddRange(instruments.All);
        var examiner = await DemoExaminer.SetUpAsync(
            db,
            instruments.All,
            cast,
            clock,
            cancellation
        );
        await DemoWelders.SetUpAsync(db, machine, cast, clock, cancellation);
        var procedure = await WriteProcedureAsync(
            db,
            new DemoProcedureParts(tools, machine, material.Lots, examiner, instruments),
            cast,
            clock,
            cancellation
        );
        var design = await DrawDesignAsync(db, cast, clock, cancellation);
        return new DemoWorkshop(machine, tools, procedure, design, material, examiner, instruments);
    }

    private static async Task<VesselDesign> DrawDesignAsync(
        WeldTraceDbContext db,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        var design = VesselDesign
            .Draw(
                "NR-10",
                "Nitrogen reservoir 10 l",
                DemoDesigns.Reservoir,
                cast.Engineer,
                clock.AfterMinutes(120)
            )
            .Must();
        db.Add(design);
        await db.SaveForDemoAsync(cancellation);
        var released = clock.AfterMinutes(600);
        design.Release(null, cast.QualityManager, released).Must();
        db.Add(
            Signature.Of(
                design,
                cast.QualityManager,
                "I release this design for production.",
                released
            )
        );
        await db.SaveForDemoAsync(cancellation);
        return design;
    }

    /// <summary>Revision A, qualified, released and superseded by B, whose narrower force window the same qualification covers.</summary>
    private static async Task<ProcedureRevision> WriteProcedureAsync(
        WeldTraceDbContext db,
        DemoProcedureParts parts,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        var first = ProcedureRevision
            .Write(
                DemoDesigns.Procedure,
                "Lap weld of reservoir ends, 6 mm",
                DemoDesigns.Content(parts, 9.5m),
                cast.Engineer,
                clock.AfterMinutes(90)
            )
            .Must();
        db.Add(first);
        await db.SaveForDemoAsync(cancellation);
        await PutOnTrialAsync(db, first, cast, clock, cancellation);
        var record = await new DemoQualification(db, cast, clock, parts.Examiner).QualifyAsync(
            first,
            parts,
            cancellation
        );
        await ReleaseAsync(db, first, record, null, cast, clock, cancellation);
        var second = first
            .Revise(
                2,
                "Sections showed hooks above 9 kN; force window narrowed.",
                cast.Engineer,
                clock.AfterMinutes(2000)
            )
            .Must();
        second
            .Edit(
                second.Title,
                DemoDesigns.Content(parts, 9.0m),
                cast.Engineer,
                clock.AfterMinutes(10)
            )
            .Must();
        db.Add(second);
        await db.SaveForDemoAsync(cancellation);
        await PutOnTrialAsync(db, second, cast, clock, cancellation);
        await ReleaseAsync(db, second, record, first, cast, clock, cancellation);
        return second;
    }

    private static Task PutOnTrialAsync(
        WeldTraceDbContext db,
        ProcedureRevision revision,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    ) =>
        SignAsync(
            db,
            revision,
            cast.Engineer,
            ProcedureRevision.TrialMeaning,
            revision.PutOnTrial,
            clock,
            cancellation
        );

    private static async Task ReleaseAsync(
        WeldTraceDbContext db,
        ProcedureRevision revision,
        QualificationRecord record,
        ProcedureRevision? earlier,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        await SignAsync(
            db,
            revision,
            cast.Engineer,
            ProcedureRevision.QualifyMeaning,
            (actor, at) => revision.Qualify(record, actor, at),
            clock,
            cancellation
        );
        await SignAsync(
            db,
            revision,
            cast.QualityManager,
            ProcedureRevision.ReleaseMeaning,
            (actor, at) => revision.Release(earlier, actor, at),
            clock,
            cancellation
        );
    }

    private static async Task SignAsync(
        WeldTraceDbContext db,
        ProcedureRevision revision,
        Actor actor,
        string meaning,
        Func<Actor, DateTimeOffset, Outcome> act,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        var at = clock.AfterMinutes(1300);
        act(actor, at).Must();
        db.Add(Signature.Of(revision, actor, meaning, at));
        await db.SaveForDemoAsync(cancellation);
    }
}

/// <summary>What the demonstration's procedure is written and qualified with.</summary>
internal sealed record DemoProcedureParts(
    DemoTools Tools,
    Machine Machine,
    IReadOnlyList<MaterialLot> Lots,
    DemoExaminer Examiner,
    DemoInstruments Instruments
);
