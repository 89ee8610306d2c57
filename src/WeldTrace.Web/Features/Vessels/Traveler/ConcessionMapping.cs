using System.Globalization;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Concessions;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

/// <summary>The rules that were waived, as the traveler prints them.</summary>
internal static class ConcessionMapping
{
    public static IEnumerable<ConcessionSheet> Map(VesselHistory history) =>
        history
            .Concessions.Where(c => c.State == ConcessionState.Granted)
            .Select(c => new ConcessionSheet
            {
                Number = c.Id.ToString("D")[^12..],
                Rule = $"{c.RuleId}: {c.RuleTitle}. {c.Forbids}",
                Step = c.Only is { } only ? $"{Step(c)}, {only.Label} only" : Step(c),
                Reason = c.Reason,
                GrantedBy = [c.AskedBy.PrintedName, c.DecidedBy!.PrintedName],
                GrantedAt = c.DecidedBy.At,
            });

    private static string Step(Concession concession) =>
        concession.StepSequence.ToString(CultureInfo.InvariantCulture);
}
