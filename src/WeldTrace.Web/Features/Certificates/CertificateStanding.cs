using WeldTrace.Domain.Certification;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Certificates;

/// <summary>How a certificate stands on a day, as a word with a shape.</summary>
/// <param name="Mark">Shape.</param>
/// <param name="Word">Word.</param>
/// <param name="Ends">The nearer of expiry and due confirmation.</param>
public sealed record CertificateStanding(Mark Mark, string Word, DateOnly Ends)
{
    public const int DaysAhead = 90;

    public static CertificateStanding Of(Certificate certificate, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(certificate);
        var ends = certificate.EndsOn;
        return certificate.IsRevoked ? new(Mark.Ended, "revoked", ends)
            : today >= certificate.ExpiresOn ? new(Mark.Failed, "expired", ends)
            : today >= ends ? new(Mark.Failed, "not confirmed in time", ends)
            : ends.DayNumber - today.DayNumber is var left && left <= DaysAhead
                ? new(
                    Mark.Warning,
                    FormattableString.Invariant($"{left} {(left == 1 ? "day" : "days")} left"),
                    ends
                )
            : new(Mark.Passed, "valid", ends);
    }
}
