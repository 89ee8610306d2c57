using System.Globalization;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Welding.CorrectPhases;

/// <summary>The bounds of the phases as typed, in seconds of the log's own time.</summary>
public sealed class CorrectPhasesForm
{
    public string? Contact { get; set; }

    public string? Depth { get; set; }

    public string? Travel { get; set; }

    public string? Steady { get; set; }

    public string? SteadyEnd { get; set; }

    public string? TravelEnd { get; set; }

    public string? Free { get; set; }

    public string? Reason { get; set; }

    /// <summary>The bounds as they stand.</summary>
    public static CorrectPhasesForm Of(IReadOnlyList<LoggedPhase> phases)
    {
        ArgumentNullException.ThrowIfNull(phases);
        if (phases.Count == 0)
        {
            return new CorrectPhasesForm();
        }

        LoggedPhase[] travel = [.. phases.Where(p => p.IsTravel)];
        var traverse = phases.FirstOrDefault(p => p.Phase == LoggedPhase.Traverse);
        var slows = travel.LastOrDefault(p => p.Phase != LoggedPhase.Ramp);
        return new CorrectPhasesForm
        {
            Contact = Text(phases[0].StartSeconds),
            Depth = Text(
                phases.FirstOrDefault(p => p.Phase == LoggedPhase.Dwell)?.StartSeconds
                    ?? travel.FirstOrDefault()?.StartSeconds
            ),
            Travel = Text(travel.FirstOrDefault()?.StartSeconds),
            Steady = Text(traverse?.StartSeconds),
            SteadyEnd = Text(slows?.EndSeconds),
            TravelEnd = Text(travel.LastOrDefault()?.EndSeconds),
            Free = Text(phases[^1].EndSeconds),
        };
    }

    /// <summary>The bounds; null with the reasons when they cannot be read or are out of order.</summary>
    public StatedBounds? Read(List<Refusal> refusals)
    {
        ArgumentNullException.ThrowIfNull(refusals);
        (string? Text, string What, string Field)[] typed =
        [
            (Contact, "Contact", nameof(Contact)),
            (Depth, "At depth", nameof(Depth)),
            (Travel, "Begins to travel", nameof(Travel)),
            (Steady, "At speed", nameof(Steady)),
            (SteadyEnd, "Slows down", nameof(SteadyEnd)),
            (TravelEnd, "Stands", nameof(TravelEnd)),
            (Free, "Free of the work", nameof(Free)),
        ];
        decimal?[] read = [.. typed.Select(t => Typed.Number(t.Text, t.What, t.Field, refusals))];
        for (var i = 1; i < read.Length; i++)
        {
            if (read[i] < read[i - 1])
            {
                refusals.Add(
                    new(
                        "order",
                        $"{typed[i].What} comes before {typed[i - 1].What.ToLowerInvariant()}; give the times in their order.",
                        typed[i].Field
                    )
                );
            }
        }

        return refusals.Count > 0
            ? null
            : new StatedBounds(
                (double)read[0]!,
                (double)read[1]!,
                (double)read[2]!,
                (double)read[3]!,
                (double)read[4]!,
                (double)read[5]!,
                (double)read[6]!
            );
    }

    private static string? Text(double? seconds) =>
        seconds?.ToString("0.###", CultureInfo.InvariantCulture);
}
