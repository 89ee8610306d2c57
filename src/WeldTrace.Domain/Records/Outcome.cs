namespace WeldTrace.Domain.Records;

/// <summary>One reason why an act is refused.</summary>
/// <param name="Code">Stable short code, for instance a floor rule <c>F6</c> or <c>serial-exists</c>.</param>
/// <param name="Sentence">What is wrong, where, and how to mend it.</param>
/// <param name="Field">Name of the input it concerns, when it is one.</param>
/// <param name="Source">Rule or standard behind the refusal, when there is one.</param>
public sealed record Refusal(
    string Code,
    string Sentence,
    string? Field = null,
    string? Source = null
);

/// <summary>Whether an act was accepted, with every reason against it.</summary>
public sealed class Outcome
{
    private Outcome(IReadOnlyList<Refusal> refusals) => Refusals = refusals;

    /// <summary>An act that was done.</summary>
    public static Outcome Accepted { get; } = new([]);

    /// <summary>All reasons, empty when the act was done.</summary>
    public IReadOnlyList<Refusal> Refusals { get; }

    /// <summary>Whether the act was done.</summary>
    public bool IsAccepted => Refusals.Count == 0;

    /// <summary>An act that was not done, for one reason.</summary>
    public static Outcome Refused(
        string code,
        string sentence,
        string? field = null,
        string? source = null
    ) => new([new Refusal(code, sentence, field, source)]);

    /// <summary>Accepted when there is no reason against it.</summary>
    public static Outcome From(IReadOnlyList<Refusal> refusals)
    {
        ArgumentNullException.ThrowIfNull(refusals);
        return refusals.Count == 0 ? Accepted : new(refusals);
    }
}

/// <summary>A value that was made, or every reason why it was not.</summary>
/// <typeparam name="T">Kind of value.</typeparam>
public sealed class Outcome<T>
    where T : class
{
    private Outcome(T? value, IReadOnlyList<Refusal> refusals)
    {
        Value = value;
        Refusals = refusals;
    }

    /// <summary>The value; null when refused.</summary>
    public T? Value { get; }

    /// <summary>All reasons, empty when the value was made.</summary>
    public IReadOnlyList<Refusal> Refusals { get; }

    /// <summary>Whether the value was made.</summary>
    [System.Diagnostics.CodeAnalysis.MemberNotNullWhen(true, nameof(Value))]
    public bool IsAccepted => Value is not null;

    /// <summary>The outcome without its value.</summary>
    public Outcome WithoutValue() => Outcome.From(Refusals);

    /// <summary>Makes an accepted outcome.</summary>
    public static implicit operator Outcome<T>(T value) =>
        new(value ?? throw new ArgumentNullException(nameof(value)), []);

    /// <summary>Makes a refused outcome; at least one reason is needed.</summary>
    public static implicit operator Outcome<T>(List<Refusal> refusals) =>
        refusals is { Count: > 0 }
            ? new(null, refusals)
            : throw new ArgumentException("A refusal needs a reason.", nameof(refusals));

    /// <summary>Makes a refused outcome with one reason.</summary>
    public static implicit operator Outcome<T>(Refusal refusal) => new(null, [refusal]);
}
