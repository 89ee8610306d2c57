namespace WeldTrace.Documents;

/// <summary>Says beside a struck record why it was corrected.</summary>
internal static class CorrectionText
{
    public static string? Note(Correction? correction, TimeZoneInfo zone)
    {
        if (correction is null)
        {
            return null;
        }

        var replaced = correction.ReplacedBy is { } next ? $" Replaced by {next}." : string.Empty;
        var when = SiteTime.Minute(correction.CorrectedAt, zone);
        var reason = correction.Reason.TrimEnd('.', ' ');
        return $"Corrected {when} by {correction.CorrectedBy}: {reason}.{replaced}";
    }
}
