using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering;

/// <summary>Collects the parts of a <see cref="Working"/> in the order in which they are shown.</summary>
public sealed class WorkingBuilder
{
    private readonly string _title;
    private readonly string _formula;
    private readonly List<WorkingValue> _inputs = [];
    private readonly List<WorkingValue> _intermediates = [];
    private readonly List<WorkingValue> _results = [];
    private string _source = "Definition.";
    private Validity _validity = Engineering.Validity.Within();

    internal WorkingBuilder(string title, string formula) => (_title, _formula) = (title, formula);

    /// <summary>Adds a given value; the unit is that of the number.</summary>
    public WorkingBuilder Input(string symbol, string name, double value, string unit = "")
    {
        _inputs.Add(Value(symbol, name, value, unit));
        return this;
    }

    /// <summary>Adds a given value when there is one.</summary>
    public WorkingBuilder OptionalInput(
        string symbol,
        string name,
        double? value,
        string unit = ""
    ) => value is { } given ? Input(symbol, name, given, unit) : this;

    /// <summary>Adds a value found on the way.</summary>
    public WorkingBuilder Step(string symbol, string name, double value, string unit = "")
    {
        _intermediates.Add(Value(symbol, name, value, unit));
        return this;
    }

    /// <summary>Adds a wanted value.</summary>
    public WorkingBuilder Result(string symbol, string name, double value, string unit = "")
    {
        _results.Add(Value(symbol, name, value, unit));
        return this;
    }

    /// <summary>Adds a wanted value when there is one.</summary>
    public WorkingBuilder OptionalResult(
        string symbol,
        string name,
        double? value,
        string unit = ""
    ) => value is { } found ? Result(symbol, name, found, unit) : this;

    /// <summary>States the source.</summary>
    public WorkingBuilder From(string source)
    {
        _source = source;
        return this;
    }

    /// <summary>States whether the range of the formula was kept.</summary>
    public WorkingBuilder Validity(Validity validity)
    {
        _validity = validity;
        return this;
    }

    /// <summary>The finished working.</summary>
    public Working Build() =>
        new(_title, _formula, [.. _inputs], [.. _intermediates], [.. _results], _source, _validity);

    /// <summary>A number that is none would be shown as a figure; it is refused instead.</summary>
    private static WorkingValue Value(string symbol, string name, double value, string unit) =>
        new(symbol, name, Finite.Require(value, name), unit);
}
