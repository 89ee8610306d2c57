using WeldTrace.Domain.People;

namespace WeldTrace.Domain.Records;

/// <summary>Collects everything that is wrong with an input, so that a person sees all of it at once.</summary>
internal sealed class Checks
{
    private readonly List<Refusal> _refusals = [];

    public bool AllHold => _refusals.Count == 0;

    public List<Refusal> Refusals => _refusals;

    public Outcome ToOutcome() => Outcome.From(_refusals);

    public Checks That(
        bool holds,
        string code,
        string sentence,
        string? field = null,
        string? source = null
    )
    {
        if (!holds)
        {
            _refusals.Add(new Refusal(code, sentence, field, source));
        }

        return this;
    }

    public Checks Text(string? text, int longest, string ask, string field)
    {
        var isGood =
            !string.IsNullOrWhiteSpace(text)
            && text.Length <= longest
            && !text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'));
        return That(isGood, "missing", $"{ask}, 1 to {longest} characters.", field);
    }

    public Checks Role(Actor actor, params IReadOnlyList<Role> roles)
    {
        if (RoleRules.Require(actor, roles) is { } refusal)
        {
            _refusals.Add(refusal);
        }

        return this;
    }

    public Checks Add(IEnumerable<Refusal> refusals)
    {
        _refusals.AddRange(refusals);
        return this;
    }
}
