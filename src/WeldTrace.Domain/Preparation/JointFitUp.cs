using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Preparation;

/// <summary>Gap and mismatch of a joint as fitted up; a later record takes its place (ISO 25239-5:2020 4.7.1, 4.12.2).</summary>
public sealed class JointFitUp : Record
{
    /// <summary>Longest remark.</summary>
    public const int LongestText = 200;

    private const string Unit = "mm";

    private JointFitUp(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "joint-fit-up";

    /// <inheritdoc/>
    public override string Label => $"{VesselSerial} {JointCode}, fit-up";

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [VesselId];

    /// <inheritdoc/>
    public override bool IsSealed => true;

    /// <summary>Vessel.</summary>
    public Guid VesselId { get; private set; }

    /// <summary>Serial of the vessel.</summary>
    public string VesselSerial { get; private set; } = "";

    /// <summary>Joint.</summary>
    public string JointCode { get; private set; } = "";

    /// <summary>UTC instant of the measurement.</summary>
    public DateTimeOffset MeasuredAt { get; private set; }

    /// <summary>Largest gap found, in mm.</summary>
    public Measured Gap { get; private set; } = null!;

    /// <summary>Largest mismatch found, in mm.</summary>
    public Measured Mismatch { get; private set; } = null!;

    /// <summary>Instrument.</summary>
    public Guid InstrumentId { get; private set; }

    /// <summary>Mark of the instrument.</summary>
    public string InstrumentMark { get; private set; } = "";

    /// <summary>Its largest permitted error, which stands for the uncertainty, in mm.</summary>
    public Measured Uncertainty { get; private set; } = null!;

    /// <summary>Remark; empty when there is none.</summary>
    public string Remark { get; private set; } = "";

    /// <summary>Who measured.</summary>
    public Guid MeasuredById { get; private set; }

    /// <summary>Printed name.</summary>
    public string MeasuredByName { get; private set; } = "";

    /// <summary>Records a fit-up; values beyond the procedure's limits are recorded too, and forbid the weld.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="jointCode">Joint of its design.</param>
    /// <param name="gap">Largest gap, in mm; zero or more.</param>
    /// <param name="mismatch">Largest mismatch, in mm; zero or more.</param>
    /// <param name="instrument">Instrument of the typed mark; null when there is none.</param>
    /// <param name="typedMark">Mark as typed.</param>
    /// <param name="remark">Remark, up to 200 characters.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Who measured.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<JointFitUp> Record(
        Vessel vessel,
        string jointCode,
        Measured gap,
        Measured mismatch,
        Instrument? instrument,
        string typedMark,
        string remark,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(gap);
        ArgumentNullException.ThrowIfNull(mismatch);
        ArgumentNullException.ThrowIfNull(remark);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.Operator, Role.Inspector, Role.Engineer)
            .That(
                !vessel.IsFinal,
                "state",
                $"{vessel.Serial} is {Vessel.StateWord(vessel.State)}; nothing more is prepared on it."
            )
            .That(
                remark.Length <= LongestText,
                "remark",
                $"Keep the remark within {LongestText} characters.",
                nameof(Remark)
            );
        CheckMeasured(checks, gap, mismatch);
        checks.Add(InstrumentCheck(instrument, typedMark, today));
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var fitUp = new JointFitUp(Guid.CreateVersion7(at))
        {
            VesselId = vessel.Id,
            VesselSerial = vessel.Serial,
            JointCode = jointCode,
            MeasuredAt = at,
            Gap = gap,
            Mismatch = mismatch,
            InstrumentId = instrument!.Id,
            InstrumentMark = instrument.Mark,
            Uncertainty = instrument.Text.LargestError,
            Remark = remark.Trim(),
            MeasuredById = actor.PersonId,
            MeasuredByName = actor.PrintedName,
        };
        fitUp.Note(actor, at, "fit-up measured", $"gap {gap}, mismatch {mismatch}");
        return fitUp;
    }

    private static void CheckMeasured(Checks checks, Measured gap, Measured mismatch) =>
        checks
            .That(
                gap.Unit == Unit && gap.InUnit() >= 0,
                "gap",
                "Give the largest gap in mm, zero or more.",
                nameof(Gap)
            )
            .That(
                mismatch.Unit == Unit && mismatch.InUnit() >= 0,
                "mismatch",
                "Give the largest mismatch in mm, zero or more.",
                nameof(Mismatch)
            );

    private static IEnumerable<Refusal> InstrumentCheck(
        Instrument? instrument,
        string typedMark,
        DateOnly today
    ) =>
        InstrumentRules.Check(
            instrument,
            typedMark,
            InstrumentKind.Length,
            null,
            Unit,
            today,
            nameof(InstrumentMark)
        );
}
