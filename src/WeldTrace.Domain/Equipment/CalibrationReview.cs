using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Equipment;

/// <summary>What follows when an instrument is found out of tolerance (ISO/IEC 17025:2017 7.10 asks that results already given be looked at).</summary>
public static class CalibrationReview
{
    /// <summary>Opens a finding on a vessel that was measured with it, at the first step that rests on it.</summary>
    /// <param name="id">Identity of the finding.</param>
    /// <param name="instrument">Instrument whose latest calibration found it out of tolerance.</param>
    /// <param name="vessel">Vessel; not yet shipped, scrapped or expended.</param>
    /// <param name="design">Its design.</param>
    /// <param name="stepSequence">First step that rests on it.</param>
    /// <param name="actor">Who entered the calibration.</param>
    /// <param name="at">UTC instant.</param>
    /// <exception cref="InvalidOperationException">The latest calibration is within tolerance, or there is none.</exception>
    public static Outcome<Finding> Ask(
        Guid id,
        Instrument instrument,
        Vessel vessel,
        VesselDesign design,
        int stepSequence,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(instrument);
        if (instrument.Latest is not { IsWithinLimit: false } calibration)
        {
            throw new InvalidOperationException(
                $"{instrument.Mark} was not found out of tolerance."
            );
        }

        var since = instrument.LastGoodBeforeLatest is { } good
            ? FormattableString.Invariant($"since {good:yyyy-MM-dd}")
            : "since it was entered";
        return Finding.Report(
            id,
            vessel,
            design,
            stepSequence,
            FormattableString.Invariant(
                $"{instrument.Mark} was found out of tolerance on {calibration.On:yyyy-MM-dd} ({calibration.AsFoundError}, {instrument.Text.LargestError} are permitted; certificate {calibration.CertificateNumber}). Review what was measured with it here {since}."
            ),
            null,
            actor,
            at
        );
    }
}
