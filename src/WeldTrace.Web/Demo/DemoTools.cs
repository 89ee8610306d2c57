using System.Globalization;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence.Attachments;

namespace WeldTrace.Web.Demo;

/// <summary>The invented tools: three that weld or wait, and the retired ones from whose ends the life is estimated.</summary>
internal sealed class DemoTools
{
    private const double WearMicrometresPerMetre = 1.5;

    private static readonly (string Mark, double Metres, RetirementReason Why, string Seen)[] Old =
    [
        ("T-0131", 41.2, RetirementReason.Wear, "Pin below its length."),
        ("T-0132", 52.7, RetirementReason.Wear, "Threads worn flat."),
        ("T-0133", 60.0, RetirementReason.Limit, "At the limit; pin still 5.52 mm."),
        ("T-0134", 33.9, RetirementReason.Breakage, "Pin sheared at the root during the plunge."),
        ("T-0135", 47.5, RetirementReason.Wear, "Pin below its diameter."),
        ("T-0136", 55.0, RetirementReason.Wear, "Pin below its length."),
        ("T-0137", 60.0, RetirementReason.Limit, "At the limit."),
    ];

    private static readonly string[] Marks = ["T-0141", "T-0142", "T-0143"];

    private DemoTools(ToolDesign design, Instrument micrometer)
    {
        (Design, Micrometer) = (design, micrometer);
        Evidence = DemoPaper.Of("Wear trial WT-7: five tools, 60 m each, no pin below its limits.");
    }

    public ToolDesign Design { get; }

    public Instrument Micrometer { get; }

    /// <summary>The report that shows the life.</summary>
    public Attachment Evidence { get; }

    public IReadOnlyList<Tool> All { get; private set; } = [];

    /// <summary>The tool that welds the vessels.</summary>
    public Tool InUse => All.First(t => t.Mark == Marks[0]);

    /// <summary>The tool that welds test pieces.</summary>
    public Tool OnTrial => All.First(t => t.Mark == Marks[1]);

    public IEnumerable<object> Records => [Design, Micrometer, Evidence, .. All];

    public static DemoTools Make(DemoCast cast, DemoClock clock)
    {
        var design = ToolDesign
            .Enter("TD-15", 1, DemoDesigns.Tool, cast.Engineer, clock.AfterMinutes(15))
            .Must();
        var tools = new DemoTools(design, EnterMicrometer(cast, clock));
        design
            .LayDownUpkeep(
                new ToolUpkeep(
                    new Measured("5.45", "mm"),
                    new Measured("5.30", "mm"),
                    Length.FromMetres(4),
                    60,
                    "WI-30"
                ),
                cast.Engineer,
                clock.AfterMinutes(5)
            )
            .Must();
        design.FileLifeEvidence(tools.Evidence.Sha256, cast.Engineer, clock.AfterMinutes(1)).Must();
        tools.All =
        [
            .. Old.Select(o => Retired(design, o.Mark, o.Metres, o.Why, o.Seen, cast, clock)),
            .. Marks.Select(m => tools.Fresh(m, cast, clock)),
        ];
        return tools;
    }

    /// <summary>Cleans the tool, or inspects its wear when that is due, so that it may weld the joint.</summary>
    public void MakeReady(Tool tool, ToolTask task, DemoCast cast, DemoClock clock)
    {
        if (ToolRules.LeftToInspection(tool, Design) < task.Path)
        {
            Inspect(tool, ToolInspectionKind.Wear, cast, clock.AfterMinutes(6));
        }
        else if (!tool.IsCleanedSinceLastUse)
        {
            Inspect(tool, ToolInspectionKind.Cleaned, cast, clock.AfterMinutes(3));
        }
    }

    /// <summary>Cleans every tool that has welded since it was last clean.</summary>
    public void CleanAll(DemoCast cast, DemoClock clock)
    {
        foreach (var tool in All.Where(t => t.State == ToolState.InService))
        {
            if (!tool.IsCleanedSinceLastUse)
            {
                Inspect(tool, ToolInspectionKind.Cleaned, cast, clock.AfterMinutes(3));
            }
        }
    }

    private Tool Fresh(string mark, DemoCast cast, DemoClock clock)
    {
        var tool = Tool.Enter(mark, Design, cast.Engineer, clock.AfterMinutes(2)).Must();
        Inspect(tool, ToolInspectionKind.FirstUse, cast, clock.AfterMinutes(4));
        if (mark != Marks[^1])
        {
            tool.PutInService(cast.Operator, clock.AfterMinutes(1)).Must();
        }

        return tool;
    }

    private void Inspect(Tool tool, ToolInspectionKind kind, DemoCast cast, DateTimeOffset at) =>
        tool.Inspect(
                new InspectionEntry(
                    kind,
                    true,
                    kind == ToolInspectionKind.Cleaned
                        ? "Aluminium dissolved in caustic, rinsed."
                        : "",
                    kind == ToolInspectionKind.Cleaned ? null : Reading(tool),
                    null
                ),
                Design,
                DateOnly.FromDateTime(at.UtcDateTime),
                cast.Operator,
                at
            )
            .Must();

    // Worn evenly, with some thousandths of scatter from the number of inspections.
    private PinReading Reading(Tool tool)
    {
        var scatter = ((tool.Inspections?.Count ?? 0) % 3) * 0.001;
        var loss = (tool.Used.Metres * WearMicrometresPerMetre / 1000) + scatter;
        return new(
            Millimetres(5.598 - loss),
            Millimetres(5.497 - (loss * 0.7)),
            Micrometer,
            Micrometer.Mark
        );
    }

    private static Tool Retired(
        ToolDesign design,
        string mark,
        double metres,
        RetirementReason why,
        string seen,
        DemoCast cast,
        DemoClock clock
    )
    {
        var at = clock.AfterMinutes(1);
        var tool = Tool.Enter(mark, design, cast.Engineer, at).Must();
        tool.TakeOver(Length.FromMetres(metres), "Tool book 2", cast.Engineer, at).Must();
        tool.Retire(why, seen, cast.Engineer, at).Must();
        return tool;
    }

    private static Instrument EnterMicrometer(DemoCast cast, DemoClock clock)
    {
        var at = clock.AfterMinutes(10);
        var today = DateOnly.FromDateTime(at.UtcDateTime);
        var micrometer = Instrument
            .Enter(
                new InstrumentText(
                    "MIC-12",
                    InstrumentKind.Length,
                    "Micrometer 0 to 25 mm, serial 20771",
                    new Measured("0", "mm"),
                    new Measured("25", "mm"),
                    new Measured("0.001", "mm"),
                    new Measured("0.004", "mm"),
                    12,
                    false
                ),
                cast.Inspector,
                at
            )
            .Must();
        micrometer
            .Calibrate(
                today.AddMonths(-2),
                "Fjord calibration laboratory",
                "FC-4471",
                null,
                new Measured("0.001", "mm"),
                today,
                cast.Inspector,
                at
            )
            .Must();
        return micrometer;
    }

    private static Measured Millimetres(double value) =>
        new(value.ToString("0.000", CultureInfo.InvariantCulture), "mm");
}
