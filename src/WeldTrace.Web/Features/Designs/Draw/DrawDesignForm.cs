using System.Globalization;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Paths;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Designs.Draw;

/// <summary>A vessel design as typed; rows left empty don't count.</summary>
public sealed class DrawDesignForm : IShownVersion
{
    private const int SpareRows = 3;

    /// <inheritdoc/>
    public int? Version { get; set; }

    public string? Number { get; set; }

    public string? Title { get; set; }

    public string? Alloy { get; set; }

    public string? Temper { get; set; }

    /// <summary>Weakest inspection document; empty for none.</summary>
    public string? RequiredDocument { get; set; }

    /// <summary>PED category; empty when none is stated.</summary>
    public string? PedCategory { get; set; }

    public string? PedSource { get; set; }

    public string? InnerDiameter { get; set; }

    public string? WallThickness { get; set; }

    public string? Volume { get; set; }

    public string? AllowableStress { get; set; }

    public string? Meop { get; set; }

    public string? Medium { get; set; }

    public string? FactorSource { get; set; }

    public string? TargetTolerance { get; set; } = "2";

    public string? AllowedHoldDrop { get; set; }

    public string? AllowedPermanentSet { get; set; }

    public string? LeakTestPressure { get; set; }

    public string? LeakRateLimit { get; set; }

    public string? LeakHoldSeconds { get; set; }

    // A form sent without any of its fields arrives as null.
    public ProductionTestsForm ProductionTests
    {
        get;
        set => field = value ?? new();
    } = new();

    // A form sent without any of its fields arrives as null.
    public SamplesForm Samples
    {
        get;
        set => field = value ?? new();
    } = new();

    /// <summary>What proof and burst follow from.</summary>
    public BasisForm Basis
    {
        get;
        set => field = value ?? new();
    } = new();

    // A form sent without any of them arrives as null.
    public List<JointForm> Joints
    {
        get;
        set => field = value ?? [];
    } = [];

    // A form sent without any of them arrives as null.
    public List<PassForm> Passes
    {
        get;
        set => field = value ?? [];
    } = [];

    // A form sent without any of them arrives as null.
    public List<StageForm> Stages
    {
        get;
        set => field = value ?? [];
    } = [];

    // A form sent without any of them arrives as null.
    public List<StepForm> Steps
    {
        get;
        set => field = value ?? [];
    } = [];

    // A form sent without any of them arrives as null.
    public List<ExaminationForm> Examinations
    {
        get;
        set => field = value ?? [];
    } = [];

    /// <summary>Adds empty rows to each table, so that there is always room for more.</summary>
    public void AddSpareRows()
    {
        Joints =
        [
            .. Joints.Where(j => !j.IsEmpty),
            .. Enumerable.Range(0, SpareRows).Select(_ => new JointForm()),
        ];
        Passes =
        [
            .. Passes.Where(p => !p.IsEmpty),
            .. Enumerable.Range(0, SpareRows).Select(_ => new PassForm()),
        ];
        Stages =
        [
            .. Stages.Where(s => !s.IsEmpty),
            .. Enumerable.Range(0, SpareRows).Select(_ => new StageForm()),
        ];
        Examinations =
        [
            .. Examinations.Where(e => !e.IsEmpty),
            .. Enumerable.Range(0, SpareRows).Select(_ => new ExaminationForm()),
        ];
        Steps =
        [
            .. Steps.Where(s => !s.IsEmpty),
            .. Enumerable.Range(0, SpareRows).Select(_ => new StepForm()),
        ];
    }

    public static DrawDesignForm Of(VesselDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        var (content, plan) = (design.Content, design.Content.Pressures);
        return new DrawDesignForm
        {
            Version = design.Version,
            Number = design.Number,
            Title = design.Title,
            Alloy = content.Alloy,
            Temper = content.Temper,
            RequiredDocument = content.RequiredDocument?.ToString(),
            PedCategory = content.PedCategory?.ToString(),
            PedSource = content.PedSource,
            InnerDiameter = Text(content.InnerDiameter.Millimetres),
            WallThickness = Text(content.WallThickness.Millimetres),
            Volume = Text(content.Volume.Litres),
            AllowableStress = Text(content.AllowableStress.Megapascals),
            Meop = Text(plan.Meop.Bar),
            Medium = plan.Medium,
            FactorSource = plan.FactorSource,
            TargetTolerance = Text((double)plan.TargetTolerance * 100),
            AllowedHoldDrop = Text(plan.AllowedHoldDrop.Bar),
            AllowedPermanentSet = Text(plan.AllowedPermanentSet.Millimetres),
            LeakTestPressure = Text(plan.LeakTestPressure.Bar),
            LeakRateLimit = Text(plan.LeakRateLimit.SiValue),
            LeakHoldSeconds = Text(plan.LeakHoldSeconds),
            Samples = SamplesForm.Of(content.Samples),
            ProductionTests = ProductionTestsForm.Of(content.ProductionTests),
            Joints = [.. content.Joints.Select(JointForm.Of)],
            Passes =
            [
                .. content.Joints.SelectMany(j => j.Passes.Select(p => PassForm.Of(j.Code, p))),
            ],
            Stages = [.. plan.Stages.Select(StageForm.Of)],
            Basis = BasisForm.Of(plan),
            Examinations = [.. (content.Examinations ?? []).Select(ExaminationForm.Of)],
            Steps = [.. content.Route.Select(StepForm.Of)],
        };
    }

    internal static string Text(double value) =>
        value.ToString("0.######", CultureInfo.InvariantCulture);
}

public sealed class JointForm
{
    public string? Code { get; set; }

    public string? Name { get; set; }

    public string? JointType { get; set; }

    public string? Thickness { get; set; }

    public string? ProcedureNumber { get; set; }

    /// <summary>Class of the weld; empty for none.</summary>
    public string? Class { get; set; }

    public bool IsEmpty => string.IsNullOrWhiteSpace(Code) && string.IsNullOrWhiteSpace(Name);

    internal static JointForm Of(Joint joint) =>
        new()
        {
            Code = joint.Code,
            Name = joint.Name,
            JointType = joint.JointType,
            Thickness = DrawDesignForm.Text(joint.Thickness.Millimetres),
            ProcedureNumber = joint.ProcedureNumber,
            Class = joint.Class?.ToString(),
        };
}

public sealed class PassForm
{
    public string? Joint { get; set; }

    public string? TrackRadius { get; set; }

    public string? Overlap { get; set; }

    public RotationSense Travel { get; set; }

    public string? Start { get; set; }

    public bool IsEmpty =>
        string.IsNullOrWhiteSpace(Joint) && string.IsNullOrWhiteSpace(TrackRadius);

    internal static PassForm Of(string joint, PassPlan pass) =>
        new()
        {
            Joint = joint,
            TrackRadius = DrawDesignForm.Text(pass.TrackRadius.Millimetres),
            Overlap = DrawDesignForm.Text(pass.Overlap.Degrees),
            Travel = pass.Travel,
            Start = DrawDesignForm.Text(pass.Start.Degrees),
        };
}

public sealed class StageForm
{
    public PressureStageKind Kind { get; set; }

    public string? Factor { get; set; }

    public string? HoldSeconds { get; set; }

    public string? Rate { get; set; }

    public bool IsEmpty =>
        string.IsNullOrWhiteSpace(Factor) && string.IsNullOrWhiteSpace(HoldSeconds);

    internal static StageForm Of(PressureStage stage) =>
        new()
        {
            Kind = stage.Kind,
            Factor = stage.FactorOnMeop.ToString(CultureInfo.InvariantCulture),
            HoldSeconds = DrawDesignForm.Text(stage.HoldSeconds),
            Rate = stage.RatePerMinute is { } rate ? DrawDesignForm.Text(rate.Bar) : null,
        };
}

public sealed class StepForm
{
    public const string EveryVessel = "every";

    public StepKind Kind { get; set; }

    public string? Title { get; set; }

    public string? Joint { get; set; }

    public string? Pass { get; set; }

    public StopPoint Stop { get; set; }

    /// <summary>Kind of sample that alone goes through it, or every vessel.</summary>
    public string? OnlyFor { get; set; } = EveryVessel;

    public bool IsEmpty => string.IsNullOrWhiteSpace(Title);

    internal static StepForm Of(RouteTemplateStep step) =>
        new()
        {
            Kind = step.Kind,
            Title = step.Title,
            Joint = step.JointCode,
            Pass = step.PassNumber?.ToString(CultureInfo.InvariantCulture),
            Stop = step.Stop,
            OnlyFor = step.OnlyFor?.ToString() ?? EveryVessel,
        };
}
