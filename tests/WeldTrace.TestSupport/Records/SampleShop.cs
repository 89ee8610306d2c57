using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.TestSupport.Records;

/// <summary>
/// A shop in memory that is ready to weld one vessel of <see cref="SampleDesigns"/>, and keeps what becomes of it: its runs, tests
/// and findings. Each act takes the next minute.
/// </summary>
public sealed class SampleShop
{
    public SampleShop(
        double toolLifeMetres = 40,
        DesignContent? design = null,
        MaterialLot? lot = null
    )
    {
        ToolDesign = SampleTools.Design(lifeMetres: toolLifeMetres);
        Tool = SampleTools.InService(ToolDesign);
        Procedure = SampleProcedures.Released(ToolDesign);
        Design = SampleDesigns.Released(content: design);
        Lot = lot ?? SampleMaterial.Lot();
        Vessel = SampleVessels.Planned(Design, Lot);
    }

    public ToolDesign ToolDesign { get; }

    public Tool Tool { get; set; }

    public ProcedureRevision Procedure { get; set; }

    public VesselDesign Design { get; }

    public MaterialLot Lot { get; }

    /// <summary>Certificates of whoever welds.</summary>
    public List<Certificate> Certificates { get; } =
    [.. SamplePeople.Welders.Select(w => SampleCertificates.Welder(w))];

    public Machine Machine { get; } = SampleMachines.Entered();

    public Vessel Vessel { get; }

    public List<WeldRun> Runs { get; } = [];

    public List<Concession> Concessions { get; } = [];

    public List<Finding> Findings { get; } = [];

    /// <summary>Those who welded on the vessel.</summary>
    public IReadOnlyList<Guid> WeldedBy => [.. Runs.Select(r => r.OperatorId).Distinct()];

    /// <summary>The next minute.</summary>
    public DateTimeOffset Now => _now += TimeSpan.FromMinutes(1);

    private DateTimeOffset _now = SampleTime.Start.AddHours(1);

    public WeldGateFacts Facts(int sequence = 10, Tool? tool = null, Actor? welder = null)
    {
        var actor = welder ?? SamplePeople.Operator;
        return new(Vessel, Vessel.Step(sequence)!, Design, Findings, Runs, Procedure, tool ?? Tool)
        {
            ToolDesign = ToolDesign,
            Machine = Machine,
            Instruments = [],
            Welder = actor,
            Certificates = [.. Certificates.Where(c => c.PersonId == actor.PersonId)],
            Material = new MaterialFacts([Lot], [], null),
            Preparation = new PreparationFacts([], []),
            Concessions = Concessions,
            Now = Now,
            Today = SampleTime.Day,
        };
    }

    /// <summary>Starts a run, as planned.</summary>
    public Outcome<WeldRun> Start(int sequence = 10, Actor? actor = null)
    {
        var facts = Facts(sequence, welder: actor);
        var run = WeldRun.Start(
            Guid.CreateVersion7(_now),
            facts,
            facts.Pass.Travel,
            Enum.GetValues<PreWeldItem>()
        );
        if (run.IsAccepted)
        {
            Runs.Add(run.Value);
        }

        return run;
    }

    public WeldRun Running(int sequence = 10) => Accept.Value(Start(sequence));

    public WeldRun Ended(int sequence = 10)
    {
        var run = Running(sequence);
        Accept.All(run.End(null, Tool, SamplePeople.Operator, Now));
        return run;
    }

    /// <summary>A run that was stopped half-way; its finding holds the vessel.</summary>
    public WeldRun Interrupted(int sequence = 10)
    {
        var run = Running(sequence);
        Findings.Add(
            Numbered(
                Accept.Value(
                    run.Interrupt(
                        run.PlannedPath * 0.5,
                        "Coolant alarm.",
                        Vessel,
                        Tool,
                        SamplePeople.Operator,
                        Now
                    )
                )
            )
        );
        return run;
    }

    /// <summary>Brings the log of a run; each finding that it opens is kept.</summary>
    public Outcome<IReadOnlyList<Finding>> TakeLog(WeldRun run, LogSummary? log = null)
    {
        ArgumentNullException.ThrowIfNull(run);
        var opened = run.TakeLog(
            log ?? SampleRunLogs.Of(run),
            Procedure.Content.Windows,
            Vessel,
            Tool,
            SamplePeople.Operator,
            Now
        );
        Findings.AddRange((opened.Value ?? []).Select(Numbered));
        return opened;
    }

    /// <summary>A run that was ended, judged from its log, and signed.</summary>
    public WeldRun Welded(int sequence = 10, LogSummary? log = null)
    {
        var run = Ended(sequence);
        Accept.Value(TakeLog(run, log));
        Accept.All(run.Sign(Vessel, SamplePeople.Operator, Now));
        return run;
    }

    /// <summary>Brings the vessel on its route to a step: welds what is to be welded, and passes the rest.</summary>
    public SampleShop Reach(int sequence)
    {
        while (Vessel.NextStep is { } next && next.Sequence < sequence)
        {
            if (next.Kind == StepKind.Weld)
            {
                Welded(next.Sequence);
            }
            else
            {
                Accept.All(Vessel.PassStep(next.Sequence, SamplePeople.Inspector, Now));
            }
        }

        return this;
    }

    /// <summary>Somebody reports a finding at a step.</summary>
    public Finding Report(int sequence = 10)
    {
        var finding = Numbered(
            Accept.Value(
                Finding.Report(
                    Guid.CreateVersion7(_now),
                    Vessel,
                    Design,
                    sequence,
                    "Scratch across the seam.",
                    null,
                    SamplePeople.Inspector,
                    Now
                )
            )
        );
        Findings.Add(finding);
        return finding;
    }

    /// <summary>What a repair of a finding is decided on: the released procedure, and its own place with 5° at each side.</summary>
    public RepairFacts RepairOf(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var (from, to) = (finding.Place?.Start?.Degrees ?? 5, finding.Place?.End?.Degrees);
        return new(
            Procedure,
            Design,
            new RepairPlace(
                finding.Place?.JointCode ?? "J1",
                finding.Place?.PassNumber ?? 1,
                Angle.FromDegrees(Math.Max(from - 5, 0)),
                Angle.FromDegrees((to ?? from) + 5)
            ),
            Findings
        );
    }

    /// <summary>What the rules look at before the repair of a finding is welded.</summary>
    public WeldGateFacts RepairFacts(Finding finding, Actor? welder = null)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var place = finding.PlannedRepair?.Place;
        var step = Vessel.WeldStepOf(place?.JointCode ?? "J1", place?.PassNumber ?? 1)!;
        return Facts(step.Sequence, welder: welder) with { Repair = finding };
    }

    /// <summary>Starts the weld of a repair, as its decision says.</summary>
    public Outcome<WeldRun> StartRepair(Finding finding, Actor? welder = null)
    {
        var facts = RepairFacts(finding, welder);
        var run = WeldRun.Start(
            Guid.CreateVersion7(_now),
            facts,
            facts.Pass.Travel,
            Enum.GetValues<PreWeldItem>()
        );
        if (run.IsAccepted)
        {
            Runs.Add(run.Value);
        }

        return run;
    }

    /// <summary>Welds the repair of a finding: the run is ended, judged from its log, and signed.</summary>
    public WeldRun Repaired(Finding finding)
    {
        var run = Accept.Value(StartRepair(finding));
        Accept.All(run.End(null, Tool, SamplePeople.Operator, Now));
        Accept.Value(TakeLog(run));
        Accept.All(run.Sign(Vessel, SamplePeople.Operator, Now, finding));
        return run;
    }

    public Outcome Dispose(Finding finding, DispositionKind kind)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return kind == DispositionKind.Repair
            ? finding.Dispose(
                kind,
                "Decided at the meeting.",
                Vessel,
                WeldedBy,
                SamplePeople.QualityManager,
                Now,
                RepairOf(finding)
            )
            : finding.Dispose(
                kind,
                "Decided at the meeting.",
                Vessel,
                WeldedBy,
                SamplePeople.Inspector,
                Now
            );
    }

    public Outcome Close(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Close(
            "Looked at it; as decided.",
            Vessel,
            Findings,
            WeldedBy,
            SamplePeople.QualityManager,
            Now
        );
    }

    /// <summary>Decides and closes a finding; it must not ask for anything to be done again.</summary>
    public void Settle(Finding finding) =>
        Accept.All(Dispose(finding, DispositionKind.UseAsIs), Close(finding));

    /// <summary>The storage gives the number at the first save.</summary>
    private Finding Numbered(Finding finding)
    {
        finding.GiveNumber(Findings.Count + 1);
        return finding;
    }
}
