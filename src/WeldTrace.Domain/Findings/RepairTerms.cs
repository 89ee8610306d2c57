using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Findings;

/// <summary>What a repair is decided on.</summary>
/// <param name="Procedure">Procedure that is to be repaired by; null when none was chosen.</param>
/// <param name="Design">Design of the vessel, which knows the passes.</param>
/// <param name="Place">Where it is to be welded; null when that was not stated.</param>
/// <param name="Others">The other findings of the vessel.</param>
public sealed record RepairFacts(
    ProcedureRevision? Procedure,
    VesselDesign Design,
    RepairPlace? Place,
    IReadOnlyCollection<Finding> Others
);

/// <summary>A repair as it was decided.</summary>
/// <param name="Procedure">Procedure revision to repair by.</param>
/// <param name="Attempt">Which attempt at this place; 1 or more.</param>
/// <param name="WeldStep">Last weld step of the joint; tests and examinations after it are done anew.</param>
/// <param name="Place">Where it is welded.</param>
/// <param name="Run">The weld run that repairs; null until it begins.</param>
public sealed record RepairPlan(
    RecordName Procedure,
    int Attempt,
    int WeldStep,
    RepairPlace? Place = null,
    RecordName? Run = null
);

/// <summary>A repair as it was carried out.</summary>
/// <param name="Length">Length of seam that was repaired.</param>
/// <param name="Note">What was done.</param>
/// <param name="PersonId">Who repaired.</param>
/// <param name="PrintedName">Printed name.</param>
/// <param name="At">UTC instant.</param>
/// <param name="Run">The weld run.</param>
public sealed record RepairWork(
    Length Length,
    string Note,
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At,
    RecordName? Run = null
);

/// <summary>The stretch of a pass along which a repair is welded.</summary>
/// <param name="JointCode">Joint.</param>
/// <param name="PassNumber">Pass whose track is followed.</param>
/// <param name="Start">Angle along the travel from the start of the pass at which it begins; 0 to 360 degrees.</param>
/// <param name="End">Angle at which it ends; beyond the start, by no more than the whole pass.</param>
public sealed record RepairPlace(string JointCode, int PassNumber, Angle Start, Angle End)
{
    private const double FullTurn = 360;
    private const double Near = 5;

    /// <summary>Whether another repair lies at the same place: on the same joint, and no more than 5 degrees apart.</summary>
    /// <param name="other">The other.</param>
    public bool Overlaps(RepairPlace other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return JointCode == other.JointCode
            && Turns.Any(turn =>
                Start.Degrees - Near <= other.End.Degrees + turn
                && other.Start.Degrees + turn - Near <= End.Degrees
            );
    }

    /// <summary>Length of the path along a pass.</summary>
    /// <param name="pass">The pass.</param>
    public Length PathOn(PassPlan pass)
    {
        ArgumentNullException.ThrowIfNull(pass);
        return pass.TrackRadius * (End.Radians - Start.Radians);
    }

    private static IEnumerable<double> Turns =>
        [-2 * FullTurn, -FullTurn, 0, FullTurn, 2 * FullTurn];

    private bool Covers(SeamPlace place) =>
        place.Start is not { } from
        || Turns.Any(turn =>
            Start.Degrees <= from.Degrees + turn
            && (place.End ?? from).Degrees + turn <= End.Degrees
        );

    internal void Check(Checks checks, VesselDesign design, Vessel vessel, SeamPlace? found)
    {
        var pass = design.Content.Joint(JointCode)?.Pass(PassNumber);
        checks.That(
            pass is not null,
            "pass",
            $"The design has no pass {PassNumber} of joint {JointCode}.",
            nameof(RepairPlan.Place)
        );
        if (pass is null)
        {
            return;
        }

        var step = vessel.WeldStepOf(JointCode, PassNumber);
        checks
            .That(
                step is { IsDone: true } or { State: StepState.Failed },
                "pass",
                $"Pass {PassNumber} of {JointCode} isn't welded yet, so there is nothing to repair on it.",
                nameof(RepairPlan.Place)
            )
            .That(
                Start.Degrees is >= 0 and <= FullTurn,
                "angle",
                "Give the angle at which the repair begins from the start of the pass, 0° to 360°.",
                nameof(Start)
            )
            .That(
                End > Start && End - Start <= Angle.FromDegrees(FullTurn) + pass.Overlap,
                "angle",
                "Give the angle at which the repair ends: beyond the one at which it begins, by no more than the whole pass.",
                nameof(End)
            )
            .That(
                found is null || found.JointCode == JointCode,
                "joint",
                $"The finding lies on joint {found?.JointCode}; the repair is welded there.",
                nameof(RepairPlan.Place)
            )
            .That(
                found is null || found.JointCode != JointCode || Covers(found),
                "cover",
                FormattableString.Invariant(
                    $"The finding lies at {found?.Start?.Degrees:0.0}° to {(found?.End ?? found?.Start)?.Degrees:0.0}°; the repair must cover it."
                ),
                nameof(Start)
            );
    }
}
