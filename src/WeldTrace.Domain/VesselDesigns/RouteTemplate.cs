using WeldTrace.Domain.Lots;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>What a step of the route is.</summary>
public enum StepKind
{
    /// <summary>Preparation, cleaning and fit-up, signed.</summary>
    Preparation,

    /// <summary>One pass of one joint.</summary>
    Weld,

    /// <summary>A visual or other examination without readings, signed.</summary>
    Examination,

    /// <summary>Pressure decay or immersion bubble test.</summary>
    LeakTest,

    /// <summary>Staged pressure test.</summary>
    PressureTest,

    /// <summary>Section cut, photographed and judged.</summary>
    Section,

    /// <summary>Final acceptance of the vessel.</summary>
    Acceptance,
}

/// <summary>Whether work stops at a step.</summary>
public enum StopPoint
{
    /// <summary>Work goes on.</summary>
    None,

    /// <summary>Hold point: work stops until the step is signed.</summary>
    Hold,

    /// <summary>Witness point: the customer or authority is told and may attend.</summary>
    Witness,
}

/// <summary>A step that every vessel of the design goes through.</summary>
/// <param name="Sequence">10, 20, ... rising.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Title">What is done.</param>
/// <param name="JointCode">Joint, for a weld or a section.</param>
/// <param name="PassNumber">Pass, for a weld.</param>
/// <param name="Stop">Hold or witness point.</param>
/// <param name="OnlyFor">Kind of destructive sample that alone goes through it; null for a step of every vessel.</param>
public sealed record RouteTemplateStep(
    int Sequence,
    StepKind Kind,
    string Title,
    string? JointCode,
    int? PassNumber,
    StopPoint Stop,
    SampleKind? OnlyFor = null
);
