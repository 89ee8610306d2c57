using System.Text.Json;
using WeldTrace.Domain.Records;
using Xunit;
using Record = WeldTrace.Domain.Records.Record;

namespace WeldTrace.Domain.Tests.States;

/// <summary>Looks at records before and after an act: a refused act leaves them to the last digit, and nothing for the ledger.</summary>
internal sealed class RecordWatch(params IReadOnlyList<Record> records)
{
    private readonly IReadOnlyList<string> _before = Describe(records);

    /// <summary>The act is judged as the table says, and a refused one has changed nothing.</summary>
    /// <param name="expected">Word of the state that follows, <c>=word</c> when nothing changes, or <c>!code</c>.</param>
    /// <param name="refusals">What the act gave.</param>
    /// <param name="state">State of the record afterwards.</param>
    public void AssertOutcome(string expected, IReadOnlyList<Refusal> refusals, Enum state)
    {
        if (expected.StartsWith('!'))
        {
            AssertRefused(expected[1..], refusals);
        }
        else
        {
            var isSame = expected.StartsWith('=');
            Assert.Empty(refusals);
            Assert.Equal(expected.TrimStart('='), state.ToString());
            Assert.Equal(isSame, _before.SequenceEqual(Describe(records)));
        }
    }

    /// <summary>There is a refusal of this code, each says what is wrong and how to mend it, and nothing has changed.</summary>
    public void AssertRefused(string code, IReadOnlyList<Refusal> refusals)
    {
        Assert.Contains(code, refusals.Select(r => r.Code));
        Assert.All(refusals, AssertReadable);
        Assert.Equal(_before, Describe(records));
    }

    /// <summary>A sentence for a person: it ends as one, and leaves no hole where a name should stand.</summary>
    public static void AssertReadable(Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        Assert.Matches(@"^[\p{Lu}\d'][^\n]{10,}[.!?]$", refusal.Sentence);
        Assert.DoesNotContain("  ", refusal.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain(" .", refusal.Sentence, StringComparison.Ordinal);
    }

    private static IReadOnlyList<string> Describe(IReadOnlyList<Record> records) =>
        [
            .. records.Select(r =>
                JsonSerializer.Serialize(r, r.GetType(), DomainJson.Options)
                + string.Concat(r.PendingActs.Select(a => $"|{a.Act}"))
            ),
        ];
}
