using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Demo;

/// <summary>One vessel of the demonstration, taken along its route step by step.</summary>
internal sealed class DemoVessel(
    WeldTraceDbContext db,
    DemoWorkshop shop,
    DemoCast cast,
    DemoClock clock,
    Vessel vessel
)
{
    private readonly List<WeldRun> _runs = [];
    private readonly List<Finding> _findings = [];
    private readonly List<StepSignOff> _signOffs = [];
    private readonly DemoWelding _welding = new(db, shop, cast, clock);
    private readonly DemoTesting _testing = new(db, shop.Instruments, cast, clock);

    public string Serial => vessel.Serial;

    public Vessel Vessel => vessel;

    public static async Task<DemoVessel> PlanAsync(
        WeldTraceDbContext db,
        DemoWorkshop shop,
        DemoCast cast,
        DemoClock clock,
        int number,
        MaterialLot tube,
        CancellationToken cancellation
    )
    {
        var serial = FormattableString.Invariant($"NR10-{number:0000}");
        var cut = shop.Material.Cut(number, tube, cast, clock);
        string[] places = ["shell", "lower end", "upper end"];
        var at = clock.AfterMinutes(4);
        var vessel = Vessel
            .Plan(
                serial,
                shop.Design,
                "PL-26-03",
                [.. cut.Zip(places, (component, place) => component.OnVessel(place))],
                cast.Engineer,
                at
            )
            .Must();
        foreach (var component in cut)
        {
            component.BuildInto(vessel, cast.Engineer, at).Must();
        }

        db.AddRange(cut);
        db.Add(vessel);
        await db.SaveForDemoAsync(cancellation);
        return new DemoVessel(db, shop, cast, clock, vessel);
    }

    /// <summary>Makes the joint of the next step ready to be welded.</summary>
    public Task PrepareNextAsync(CancellationToken cancellation) =>
        _welding.PrepareAsync(vessel, vessel.NextStep!.JointCode!, cancellation);

    /// <summary>Does every step before a sequence number.</summary>
    public async Task GoToAsync(int sequence, CancellationToken cancellation)
    {
        while (vessel.NextStep is { } step && step.Sequence < sequence)
        {
            await DoAsync(step, cancellation);
        }
    }

    /// <summary>Welds the next pass with an excursion of the axial force, or stops half-way round.</summary>
    public async Task WeldBadlyAsync(bool isInterrupted, CancellationToken cancellation)
    {
        var (run, findings) = await _welding.WeldAsync(
            vessel,
            vessel.NextStep!,
            isInterrupted ? DemoFault.Interruption : DemoFault.Excursion,
            cancellation
        );
        _runs.Add(run);
        _findings.AddRange(findings);
    }

    /// <summary>Decides every open finding to be used as it is, and verifies it.</summary>
    public async Task SettleFindingsAsync(CancellationToken cancellation)
    {
        var weldedBy = _runs.Select(r => r.OperatorId).Distinct().ToList();
        foreach (var finding in _findings.Where(f => f.State == FindingState.Open).ToList())
        {
            var decided = clock.AfterMinutes(180);
            finding
                .Dispose(
                    DispositionKind.UseAsIs,
                    "Force rose by a chip under the shoulder over a few millimetres; ultrasonic scan of that stretch shows no indication.",
                    vessel,
                    weldedBy,
                    cast.Inspector,
                    decided
                )
                .Must();
            db.Add(
                Signature.Of(
                    finding,
                    cast.Inspector,
                    "I decide on this finding as stated.",
                    decided
                )
            );
            await db.SaveForDemoAsync(cancellation);
            var verified = clock.AfterMinutes(60);
            finding
                .Close(
                    "Scan report seen; the chip is gone from the shoulder.",
                    vessel,
                    _findings,
                    weldedBy,
                    cast.QualityManager,
                    verified
                )
                .Must();
            db.Add(
                Signature.Of(
                    finding,
                    cast.QualityManager,
                    "I verified that the decision was carried out.",
                    verified
                )
            );
            await db.SaveForDemoAsync(cancellation);
        }
    }

    private async Task DoAsync(RouteStep step, CancellationToken cancellation)
    {
        var facts = new TestFacts(vessel, step, shop.Design, _findings)
        {
            Examiner = new ExaminerFacts(shop.Examiner.Certificates, clock.Today),
            Examined = StepSignOff.Examined(vessel, _signOffs),
        };
        var weldedBy = _runs.Select(r => r.OperatorId).Distinct().ToList();
        switch (step.Kind)
        {
            case StepKind.Weld:
                var (run, findings) = await _welding.WeldAsync(
                    vessel,
                    step,
                    DemoFault.None,
                    cancellation
                );
                _runs.Add(run);
                _findings.AddRange(findings);
                break;
            case StepKind.LeakTest:
                await _testing.LeakAsync(facts, weldedBy, cancellation);
                break;
            case StepKind.PressureTest:
                await _testing.PressureAsync(facts, weldedBy, cancellation);
                break;
            case StepKind.Section:
                await _testing.SectionAsync(facts, weldedBy, cancellation);
                break;
            default:
                await SignOffAsync(facts, weldedBy, cancellation);
                break;
        }
    }

    private async Task SignOffAsync(
        TestFacts facts,
        List<Guid> weldedBy,
        CancellationToken cancellation
    )
    {
        if (facts.Step.Kind == StepKind.Preparation)
        {
            await _welding.PrepareAsync(vessel, shop.Design.Content.Joints[0].Code, cancellation);
        }

        var at = clock.AfterMinutes(40);
        var signer = facts.Step.Kind == StepKind.Preparation ? cast.Operator : cast.Inspector;
        var signOff = StepSignOff
            .Confirm(
                Guid.CreateVersion7(at),
                facts,
                weldedBy,
                null,
                facts.Step.Kind == StepKind.Examination ? DemoPlan.Examination(facts) : null,
                signer,
                at
            )
            .Must()
            .SignOff;
        _signOffs.Add(signOff);
        db.AddRange(
            signOff,
            Signature.Of(signOff, signer, StepSignOff.MeaningOf(facts.Step.Kind), at)
        );
        await db.SaveForDemoAsync(cancellation);
    }
}
