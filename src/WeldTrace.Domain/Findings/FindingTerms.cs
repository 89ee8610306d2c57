using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Findings;

/// <summary>State of a finding.</summary>
public enum FindingState
{
    /// <summary>Nobody has decided what happens.</summary>
    Open,

    /// <summary>Decided; not yet verified.</summary>
    Disposed,

    /// <summary>Verified and done with.</summary>
    Closed,
}

/// <summary>What happens to a vessel with a finding.</summary>
public enum DispositionKind
{
    /// <summary>It stays as it is.</summary>
    UseAsIs,

    /// <summary>Done again, so that it fully conforms.</summary>
    Rework,

    /// <summary>Mended, acceptable without fully conforming.</summary>
    Repair,

    /// <summary>Rejected for ever.</summary>
    Scrap,
}

/// <summary>Where a finding comes from.</summary>
public enum FindingOrigin
{
    /// <summary>A parameter left its window during a run.</summary>
    Excursion,

    /// <summary>A run ended before its planned path.</summary>
    InterruptedRun,

    /// <summary>A leak test failed or was undecided.</summary>
    LeakTest,

    /// <summary>A pressure test failed or was undecided.</summary>
    PressureTest,

    /// <summary>A section or examination was rejected.</summary>
    Examination,

    /// <summary>Seen and reported by someone.</summary>
    Report,

    /// <summary>A destructive sample of its lot did not pass.</summary>
    LotSample,

    /// <summary>Another vessel's finding may concern this one too.</summary>
    Containment,
}

/// <summary>Where on the seam a finding lies.</summary>
/// <param name="JointCode">Joint.</param>
/// <param name="PassNumber">Pass.</param>
/// <param name="Start">Angle from the pass's start at which it begins; null when unknown.</param>
/// <param name="End">Angle from the pass's start at which it ends; null when unknown.</param>
public sealed record SeamPlace(string JointCode, int? PassNumber, Angle? Start, Angle? End)
{
    private const double FurthestDegrees = 540;

    internal void Check(Checks checks, DesignContent content)
    {
        var joint = content.Joint(JointCode);
        checks
            .That(
                joint is not null,
                "joint",
                $"The design has no joint '{JointCode}'.",
                nameof(JointCode)
            )
            .That(
                joint is null || PassNumber is not { } pass || joint.Pass(pass) is not null,
                "pass",
                $"Joint {JointCode} has no pass {PassNumber}.",
                nameof(PassNumber)
            )
            .That(
                Start is null || Start.Value.Degrees is >= 0 and < FurthestDegrees,
                "angle",
                "Give the angle at which it begins from the start of the pass, 0° to 540°.",
                nameof(Start)
            )
            .That(
                End is null
                    || Start is { } start
                        && End.Value.Degrees >= start.Degrees
                        && End.Value.Degrees < FurthestDegrees,
                "angle",
                "Give the angle at which it ends, from where it begins to 540°; give both or only the first.",
                nameof(End)
            );
    }
}

/// <summary>The decision on a finding.</summary>
/// <param name="Kind">What happens.</param>
/// <param name="Reason">Why; 1 to 1000 characters.</param>
/// <param name="PersonId">Who decided.</param>
/// <param name="PrintedName">Printed name of that person.</param>
/// <param name="At">UTC instant.</param>
public sealed record Disposition(
    DispositionKind Kind,
    string Reason,
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At
);

/// <summary>The verification that a decision was carried out.</summary>
/// <param name="Note">What was seen.</param>
/// <param name="PersonId">Who verified.</param>
/// <param name="PrintedName">Printed name of that person.</param>
/// <param name="At">UTC instant.</param>
public sealed record Verification(
    string Note,
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At
);
