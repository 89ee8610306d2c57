using WeldTrace.Domain.Records;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Reading;

/// <summary>The rules before a weld as lines of a page, each with links to the records behind it.</summary>
public static class RuleLines
{
    /// <summary>One line for each verdict.</summary>
    /// <param name="gate">Verdicts.</param>
    /// <param name="preparation">Page on which the joint's cleaning and fit-up stand.</param>
    /// <param name="more">What else stands behind a rule or can be done about it.</param>
    /// <param name="isPast">Whether they are told as they stood when the run was started.</param>
    public static IReadOnlyList<RuleLine> Of(
        IEnumerable<RuleVerdict> gate,
        string preparation,
        Func<string, IEnumerable<RuleLink>>? more = null,
        bool isPast = false
    ) =>
        [
            .. gate.Select(v =>
            {
                var line = Of(v, preparation, isPast);
                return line with { Links = [.. line.Links, .. more?.Invoke(v.RuleId) ?? []] };
            }),
        ];

    private static RuleLine Of(RuleVerdict verdict, string preparation, bool isPast) =>
        new(
            verdict.RuleId,
            DomainMarks.Of(verdict.Standing),
            Word(verdict.Standing, isPast),
            $"{verdict.Title}. {verdict.Reason}",
            verdict.Source
        )
        {
            Links = Links(verdict, preparation),
        };

    private static string Word(RuleStanding standing, bool isPast) =>
        (standing, isPast) switch
        {
            (RuleStanding.Holds, false) => "Holds",
            (RuleStanding.Holds, true) => "Held",
            (RuleStanding.Forbids, false) => "Forbids",
            (RuleStanding.Forbids, true) => "Forbade",
            (RuleStanding.Waived, _) => "Waived",
            _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, null),
        };

    private static List<RuleLink> Links(RuleVerdict verdict, string preparation)
    {
        IEnumerable<RecordName> names = verdict.Concession is { } concession
            ? [concession, .. verdict.Behind ?? []]
            : verdict.Behind ?? [];
        var links = names
            .Select(name => (name.Label, Address: RecordLinks.Of(name)))
            .Where(l => l.Address is not null)
            .Select(l => new RuleLink(l.Label, l.Address!))
            .Distinct()
            .ToList();
        return links.Count > 0 ? links
            : Register(verdict.RuleId, preparation) is { } register ? [register]
            : [];
    }

    // With no record behind it, the place where one would be entered.
    private static RuleLink? Register(string ruleId, string preparation) =>
        ruleId switch
        {
            "F2" or "F3" => new("Procedures", Routes.Procedures),
            "F4" => new("Certificates", Routes.Certificates),
            "F5" => new("Machines", Routes.Equipment),
            "F6" => new("Tools", Routes.Tools),
            "F7" => new("Material", Routes.MaterialLots),
            "F8" => new("Cleaning and fit-up", preparation),
            _ => null,
        };
}
