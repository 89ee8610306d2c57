using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Equipment;

/// <summary>What an instrument measures.</summary>
public enum InstrumentKind
{
    /// <summary>Pressure gauge or transducer.</summary>
    Pressure,

    /// <summary>Thermometer.</summary>
    Temperature,

    /// <summary>Caliper, micrometer, gauge block, depth gauge.</summary>
    Length,

    /// <summary>Tracer gas detector with its calibrated leak.</summary>
    Leak,

    /// <summary>Force or torque transducer of a machine.</summary>
    Force,

    /// <summary>Testing machine for tensile, bend or hardness.</summary>
    Mechanical,

    /// <summary>Light, clock, barometer, balance or anything else.</summary>
    Other,
}

/// <summary>What an instrument is, as entered.</summary>
/// <param name="Mark">Number on the instrument; unique.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Description">Maker's type and serial number.</param>
/// <param name="Lower">Lower end of its range.</param>
/// <param name="Upper">Upper end of its range, in the same unit; above the lower end.</param>
/// <param name="Resolution">Smallest step that can be read; above zero.</param>
/// <param name="LargestError">Largest permitted error at calibration, either way; above zero.</param>
/// <param name="IntervalMonths">Months between calibrations, 1 to 60.</param>
/// <param name="IsIndicationOnly">Whether it only shows a tendency and is never used for acceptance (NASA-STD-8739.12A 1.2.3).</param>
public sealed record InstrumentText(
    string Mark,
    InstrumentKind Kind,
    string Description,
    Measured Lower,
    Measured Upper,
    Measured Resolution,
    Measured LargestError,
    int IntervalMonths,
    bool IsIndicationOnly
)
{
    /// <summary>Unit of all its values.</summary>
    public string Unit => Upper.Unit;
}

/// <summary>One calibration.</summary>
/// <param name="On">Day.</param>
/// <param name="Laboratory">Laboratory.</param>
/// <param name="CertificateNumber">Number of its certificate.</param>
/// <param name="FileSha256">SHA-256 of the certificate's file; null when none was handed in.</param>
/// <param name="AsFoundError">Largest error found before any adjustment, with its sign.</param>
/// <param name="DueOn">First day on which it is out of date.</param>
/// <param name="IsWithinLimit">Whether the error found was within the permitted one.</param>
/// <param name="EnteredByName">Printed name of whoever entered it.</param>
public sealed record Calibration(
    DateOnly On,
    string Laboratory,
    string CertificateNumber,
    string? FileSha256,
    Measured AsFoundError,
    DateOnly DueOn,
    bool IsWithinLimit,
    string EnteredByName
);

/// <summary>A measuring instrument with its calibrations.</summary>
public sealed class Instrument : Record
{
    /// <summary>Longest mark or word.</summary>
    public const int LongestText = 80;

    private Instrument(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "instrument";

    /// <inheritdoc/>
    public override string Label => Mark;

    /// <summary>Number on the instrument; unique.</summary>
    public string Mark { get; private set; } = "";

    /// <summary>What it measures.</summary>
    public InstrumentKind Measures { get; private set; }

    /// <summary>What it is.</summary>
    public InstrumentText Text { get; private set; } = null!;

    /// <summary>Calibrations, oldest first.</summary>
    public IReadOnlyList<Calibration> Calibrations { get; private set; } = [];

    /// <summary>Why it was taken out of use; null while it is used.</summary>
    public string? WithdrawnBecause { get; private set; }

    /// <summary>The latest calibration; null before the first.</summary>
    public Calibration? Latest => Calibrations.Count > 0 ? Calibrations[^1] : null;

    /// <summary>Day from which it is out of date; null before the first calibration.</summary>
    public DateOnly? DueOn => Latest?.DueOn;

    /// <summary>Enters an instrument.</summary>
    public static Outcome<Instrument> Enter(InstrumentText text, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(text);
        var checks = new Checks().Role(actor, Role.Engineer, Role.Inspector, Role.QualityManager);
        Check(checks, text);
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var instrument = new Instrument(Guid.CreateVersion7(at))
        {
            Mark = text.Mark.Trim(),
            Measures = text.Kind,
            Text = text,
        };
        instrument.Note(actor, at, "instrument entered");
        return instrument;
    }

    /// <summary>Enters a calibration; one out of tolerance asks for a review of everything measured since the last good one.</summary>
    /// <param name="on">Day of the calibration.</param>
    /// <param name="laboratory">Laboratory; 1 to 80 characters.</param>
    /// <param name="certificateNumber">Number of its certificate; 1 to 80 characters.</param>
    /// <param name="fileSha256">The certificate's file, if it was handed in.</param>
    /// <param name="asFoundError">Largest error found before any adjustment, in the instrument's unit.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Who enters it.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Calibrate(
        DateOnly on,
        string laboratory,
        string certificateNumber,
        string? fileSha256,
        Measured asFoundError,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(asFoundError);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = CheckCalibration(
            on,
            laboratory,
            certificateNumber,
            asFoundError,
            today,
            actor
        );
        if (checks.AllHold)
        {
            var isWithin = Math.Abs(asFoundError.InUnit()) <= Math.Abs(Text.LargestError.InUnit());
            Calibrations =
            [
                .. Calibrations,
                new(
                    on,
                    laboratory.Trim(),
                    certificateNumber.Trim(),
                    fileSha256,
                    asFoundError,
                    on.AddMonths(Text.IntervalMonths),
                    isWithin,
                    actor.PrintedName
                ),
            ];
            Note(actor, at, isWithin ? "calibrated" : "calibrated, found out of tolerance");
        }

        return checks.ToOutcome();
    }

    /// <summary>Takes it out of use for good.</summary>
    public Outcome Withdraw(string reason, Actor actor, DateTimeOffset at)
    {
        var checks = new Checks()
            .Role(actor, Role.Inspector, Role.QualityManager)
            .That(WithdrawnBecause is null, "state", $"{Mark} is out of use already.")
            .Text(reason, LongestText, "Give the reason", "Reason");
        if (checks.AllHold)
        {
            WithdrawnBecause = reason.Trim();
            Note(actor, at, "instrument taken out of use", reason.Trim());
        }

        return checks.ToOutcome();
    }

    /// <summary>Day of the last calibration within tolerance before the latest one; null when there was none.</summary>
    public DateOnly? LastGoodBeforeLatest =>
        Calibrations.SkipLast(1).LastOrDefault(c => c.IsWithinLimit)?.On;

    private static void Check(Checks checks, InstrumentText text)
    {
        Measured[] values = [text.Lower, text.Upper, text.Resolution, text.LargestError];
        checks
            .Text(text.Mark, LongestText, "Give the instrument's mark", nameof(text.Mark))
            .Text(
                text.Description,
                LongestText,
                "Give type and serial number",
                nameof(text.Description)
            )
            .That(
                values.All(v => v.Unit == text.Unit),
                "unit",
                "Give range, resolution and error in one unit.",
                nameof(text.Upper)
            )
            .That(
                text.Upper.InUnit() > text.Lower.InUnit(),
                "range",
                "The upper end of the range must lie above the lower end.",
                nameof(text.Upper)
            )
            .That(
                text.Resolution.InUnit() > 0,
                "resolution",
                "Give the resolution, above zero.",
                nameof(text.Resolution)
            )
            .That(
                text.LargestError.InUnit() > 0,
                "error",
                "Give the largest permitted error, above zero.",
                nameof(text.LargestError)
            )
            .That(
                text.IntervalMonths is >= 1 and <= 60,
                "interval",
                "Give the months between calibrations, 1 to 60.",
                nameof(text.IntervalMonths)
            );
    }

    private Checks CheckCalibration(
        DateOnly on,
        string laboratory,
        string certificateNumber,
        Measured asFoundError,
        DateOnly today,
        Actor actor
    ) =>
        new Checks()
            .Role(actor, Role.Inspector, Role.QualityManager)
            .That(WithdrawnBecause is null, "state", $"{Mark} is out of use: {WithdrawnBecause}")
            .That(
                on <= today,
                "future",
                "The day of the calibration lies in the future; check it.",
                nameof(Calibration.On)
            )
            .That(
                Latest is null || on > Latest.On,
                "order",
                $"The calibration of {Latest?.On:yyyy-MM-dd} is entered already; a new one is later.",
                nameof(Calibration.On)
            )
            .Text(laboratory, LongestText, "Name the laboratory", nameof(Calibration.Laboratory))
            .Text(
                certificateNumber,
                LongestText,
                "Give the number of the calibration certificate",
                nameof(Calibration.CertificateNumber)
            )
            .That(
                asFoundError.Unit == Text.Unit,
                "unit",
                $"Give the error in {Text.Unit}, as the instrument reads.",
                nameof(Calibration.AsFoundError)
            );
}
