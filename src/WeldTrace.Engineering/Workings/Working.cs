namespace WeldTrace.Engineering;

/// <summary>How a figure was worked out: what went in, by which formula, what came out, from which source.</summary>
public sealed record Working
{
    internal Working(
        string title,
        string formula,
        IReadOnlyList<WorkingValue> inputs,
        IReadOnlyList<WorkingValue> intermediates,
        IReadOnlyList<WorkingValue> results,
        string source,
        Validity validity
    )
    {
        (Title, Formula, Source, Validity) = (title, formula, source, validity);
        (Inputs, Intermediates, Results) = (inputs, intermediates, results);
    }

    /// <summary>What was computed, in words.</summary>
    public string Title { get; }

    /// <summary>The formula as text, several separated by semicolons.</summary>
    public string Formula { get; }

    /// <summary>The values that were given.</summary>
    public IReadOnlyList<WorkingValue> Inputs { get; }

    /// <summary>Values found on the way.</summary>
    public IReadOnlyList<WorkingValue> Intermediates { get; }

    /// <summary>The values that were wanted.</summary>
    public IReadOnlyList<WorkingValue> Results { get; }

    /// <summary>Where the formula comes from; says so when it is common practice or from memory.</summary>
    public string Source { get; }

    /// <summary>Whether the inputs lie inside the range of the formula.</summary>
    public Validity Validity { get; }

    /// <summary>Begins a working.</summary>
    /// <param name="title">What is computed.</param>
    /// <param name="formula">Formula text with the symbols of the values that follow.</param>
    public static WorkingBuilder Of(string title, string formula) => new(title, formula);
}
