using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Drawings;

/// <summary>One circular seam with the places where a parameter left its window.</summary>
public sealed record SeamPlan
{
    public required Length TrackRadius { get; init; }

    /// <summary>Sense of travel, seen from the shoulder side.</summary>
    public required RotationSense Travel { get; init; }

    /// <summary>Where the tool plunged: clockwise from the datum mark at the top.</summary>
    public Angle Start { get; init; }

    public Angle Overlap { get; init; }

    /// <summary>The stretch that was to be welded; null for the whole pass.</summary>
    public SeamStretch? Repair { get; init; }

    /// <summary>Path actually travelled; less than the whole path when the run was interrupted.</summary>
    public Length? Travelled { get; init; }

    /// <summary>Where a section was cut, along the travel from the start; null when none was.</summary>
    public Angle? Cut { get; init; }

    public IReadOnlyList<SeamExcursion> Excursions { get; init; } = [];

    /// <summary>Places that other records speak of, such as sections and flaws.</summary>
    public IReadOnlyList<SeamPoint> Points { get; init; } = [];
}

/// <summary>How a place on the seam is drawn.</summary>
public enum SeamPointShape
{
    /// <summary>A bar across the seam: a section.</summary>
    Bar,

    /// <summary>A standing square: a flaw.</summary>
    Diamond,

    /// <summary>A ring: bubbles.</summary>
    Ring,

    /// <summary>A triangle: a finding.</summary>
    Triangle,
}

/// <summary>A place on the seam.</summary>
/// <param name="Letter">Letter under which it stands in the list.</param>
/// <param name="Shape">Its shape.</param>
/// <param name="What">What it is, in words.</param>
/// <param name="Along">Along the travel from the start of the pass.</param>
public sealed record SeamPoint(string Letter, SeamPointShape Shape, string What, Angle Along);

/// <summary>A part of a pass that is welded by itself.</summary>
/// <param name="From">Path from the start of the pass to where it begins.</param>
/// <param name="Length">Planned length of path.</param>
public sealed record SeamStretch(Length From, Length Length);

/// <summary>A stretch of the seam, measured along the path from the start of the traverse.</summary>
/// <param name="Number">Number under which the excursion stands in the table of the run.</param>
/// <param name="Parameter">Name of the parameter that left its window.</param>
/// <param name="From">Path from the start to the first sample outside.</param>
/// <param name="To">Path from the start to the last sample outside; not less than <paramref name="From"/>.</param>
public sealed record SeamExcursion(string Number, string Parameter, Length From, Length To);
