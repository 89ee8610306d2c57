namespace WeldTrace.Domain.Certification;

/// <summary>How a certificate stood on a day in the past: only what had happened up to that day counts.</summary>
public static class CertificateOnDay
{
    /// <summary>Why a certificate did not hold on a day; null when it did.</summary>
    /// <param name="certificate">Certificate.</param>
    /// <param name="day">Day at the site.</param>
    public static string? Against(Certificate certificate, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(certificate);
        var revocation = certificate.Revocations.FirstOrDefault(r =>
            r.JointTypes.Count == 0 && r.On <= day
        );
        return day < certificate.Text.TestedOn
                ? $"{certificate.Number} is valid only from {certificate.Text.TestedOn:yyyy-MM-dd}."
            : day >= certificate.ExpiresOn
                ? $"{certificate.Number} had expired on {certificate.ExpiresOn:yyyy-MM-dd}."
            : revocation is not null
                ? $"{certificate.Number} was revoked on {revocation.On:yyyy-MM-dd}: {revocation.Reason}"
            : day >= certificate.ConfirmationDueAsOf(day)
                ? $"The confirmation of {certificate.Number} was due by {certificate.ConfirmationDueAsOf(day):yyyy-MM-dd}."
            : null;
    }

    /// <summary>How long a certificate held, as seen from a day on which it did.</summary>
    /// <param name="certificate">Certificate.</param>
    /// <param name="day">Day at the site.</param>
    public static string Standing(Certificate certificate, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(certificate);
        return certificate.ConfirmationDueAsOf(day) is { } due
            ? $"Valid until {certificate.ExpiresOn:yyyy-MM-dd}, next confirmation due by {due:yyyy-MM-dd}."
            : $"Valid until {certificate.ExpiresOn:yyyy-MM-dd}.";
    }
}
