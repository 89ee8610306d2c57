using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Compliance;

/// <summary>What was looked for and found for one requirement.</summary>
internal sealed class ComplianceEvidence
{
    private readonly List<RecordName> _found = [];
    private readonly List<string> _missing = [];
    private readonly List<string> _remarks = [];
    private string? _notApplicable;

    /// <summary>It asks nothing of the vessel, for this reason.</summary>
    public static ComplianceEvidence NotAsked(string because) => new() { _notApplicable = because };

    /// <summary>Every subject has to be shown by a record; a subject that is not is named.</summary>
    /// <param name="subjects">What has to be shown.</param>
    /// <param name="record">The record that shows it; null when none does.</param>
    /// <param name="missing">What to say of a subject that isn't shown.</param>
    /// <param name="none">What to say when there is no subject yet.</param>
    public static ComplianceEvidence ForEach<T>(
        IEnumerable<T> subjects,
        Func<T, Record?> record,
        Func<T, string> missing,
        string none
    )
    {
        var evidence = new ComplianceEvidence();
        var count = 0;
        foreach (var subject in subjects)
        {
            count++;
            if (record(subject) is { } shown)
            {
                evidence.Add(RecordName.Of(shown));
            }
            else
            {
                evidence.Miss(missing(subject));
            }
        }

        if (count == 0)
        {
            evidence.Miss(none);
        }

        return evidence;
    }

    public void Add(RecordName name) => _found.Add(name);

    public void Miss(string sentence) => _missing.Add(sentence);

    public void Remark(string sentence) => _remarks.Add(sentence);

    public ComplianceLine On(Requirement requirement) =>
        new(
            requirement,
            _notApplicable is not null ? ComplianceState.NotApplicable
                : _missing.Count == 0 && _found.Count > 0 ? ComplianceState.Shown
                : _found.Count > 0 ? ComplianceState.Partly
                : ComplianceState.NotShown,
            [.. _found.DistinctBy(f => f.Id)],
            _notApplicable ?? string.Join(' ', _missing.Concat(_remarks).Distinct())
        );
}
