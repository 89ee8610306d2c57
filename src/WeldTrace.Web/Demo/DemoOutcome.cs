using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Demo;

/// <summary>The demonstration goes through the same rules as everyone; a refusal there is a fault of the program.</summary>
internal static class DemoOutcome
{
    public static T Must<T>(this Outcome<T> outcome)
        where T : class => outcome.Value ?? throw Refused(outcome.Refusals);

    public static void Must(this Outcome outcome)
    {
        if (!outcome.IsAccepted)
        {
            throw Refused(outcome.Refusals);
        }
    }

    private static InvalidOperationException Refused(IReadOnlyList<Refusal> refusals) =>
        new("The demonstration was refused: " + string.Join(" ", refusals.Select(r => r.Sentence)));
}
