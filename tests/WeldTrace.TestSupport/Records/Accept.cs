using WeldTrace.Domain.Records;

namespace WeldTrace.TestSupport.Records;

/// <summary>What a builder expects to be accepted; a refusal is a mistake in the builder and is told in full.</summary>
public static class Accept
{
    public static T Value<T>(Outcome<T> outcome)
        where T : class =>
        outcome.Value ?? throw new InvalidOperationException(Reasons(outcome.Refusals));

    public static void All(params IReadOnlyList<Outcome> outcomes)
    {
        foreach (var outcome in outcomes.Where(o => !o.IsAccepted))
        {
            throw new InvalidOperationException(Reasons(outcome.Refusals));
        }
    }

    private static string Reasons(IEnumerable<Refusal> refusals) =>
        string.Join(" ", refusals.Select(r => r.Sentence));
}
