namespace WeldTrace.Documents;

/// <summary>Says beside a struck record why it was corrected.</summary>
internal static class CorrectionText
{
    /// <summary>What the record is now; null for one that stands.</summary>
    public static StateMark? Mark(Correction? correction) =>
        correction is null ? null
        : correction.ReplacedBy is null ? new StateMark("withdrawn", MarkShape.Cross)
        : new StateMark("replaced", MarkShape.Cross);

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
