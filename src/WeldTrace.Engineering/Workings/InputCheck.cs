using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;

namespace WeldTrace.Engineering;

/// <summary>Gathers every refusal of a set of inputs, never just the first.</summary>
internal sealed class InputCheck
{
    /// <summary>Nothing that people weld or test is larger, in any unit; keeps products of inputs finite.</summary>
    private const double Largest = 1e30;

    private readonly List<Refusal> _refusals = [];

    public IReadOnlyList<Refusal> Refusals => _refusals;

    public bool IsClean => _refusals.Count == 0;

    public static InputCheck From(IEnumerable<Refusal> refusals)
    {
        var check = new InputCheck();
        check._refusals.AddRange(refusals);
        return check;
    }

    public InputCheck Positive(string where, double value, string unit = "") =>
        value is > 1 / Largest and < Largest
            ? this
            : Refuse(
                RefusalReason.NotPositive,
                where,
                $"It is {With(value, unit)}, but must be above zero and of a sensible size.",
                "Enter a value above zero."
            );

    public InputCheck NotNegative(string where, double value, string unit = "") =>
        value is >= 0 and < Largest
            ? this
            : Refuse(
                RefusalReason.OutOfRange,
                where,
                $"It is {With(value, unit)}, but must be zero or more and of a sensible size.",
                "Enter zero or a value above it."
            );

    public InputCheck Sensible(string where, IEnumerable<double> values) =>
        Require(
            values.All(value => Math.Abs(value) < Largest),
            RefusalReason.OutOfRange,
            where,
            "One of them is no number of a sensible size.",
            "Correct it."
        );

    public InputCheck Between(
        string where,
        double value,
        double low,
        double high,
        string unit = ""
    ) =>
        value >= low && value <= high
            ? this
            : Refuse(
                RefusalReason.OutOfRange,
                where,
                $"It is {With(value, unit)}, outside {Figures.Format(low)} to {With(high, unit)}.",
                $"Enter a value from {Figures.Format(low)} to {With(high, unit)}."
            );

    public InputCheck Require(
        bool holds,
        RefusalReason reason,
        string where,
        string what,
        string mend
    ) => holds ? this : Refuse(reason, where, what, mend);

    /// <summary>A limit, when there is one, is of the kind that is judged.</summary>
    public InputCheck LimitOf(
        string where,
        WrittenLimit? limit,
        Dimension dimension,
        string units
    ) =>
        Require(
            limit is null || UnitCatalogue.Get(limit.Unit).Dimension == dimension,
            RefusalReason.OutOfRange,
            where,
            limit?.Unit.Length > 0
                ? $"Its unit, {limit.Unit}, is not one for this."
                : "It has no unit.",
            $"Give it {units}."
        );

    /// <summary>Computes when nothing is refused; numbers so far apart that arithmetic fails are refused too.</summary>
    public Computed<T> Compute<T>(Func<T> compute)
        where T : IWorked =>
        Compute(() =>
        {
            var value = compute();
            return (value, value.Working);
        });

    /// <summary>The same for a plain value with its working.</summary>
    public Computed<T> Compute<T>(Func<(T Value, Working Working)> compute)
        where T : notnull
    {
        if (!IsClean)
        {
            return Refused<T>();
        }

        try
        {
            var (value, working) = compute();
            return Computed.Of(value, working);
        }
        catch (NotFiniteException)
        {
            return Refuse(
                    RefusalReason.OutOfRange,
                    "inputs",
                    "They are too far apart to compute with.",
                    "Check the unit of each."
                )
                .Refused<T>();
        }
    }

    public Computed<T> Refused<T>()
        where T : notnull => new(_refusals);

    private InputCheck Refuse(RefusalReason reason, string where, string what, string mend)
    {
        _refusals.Add(new(reason, where, what, mend));
        return this;
    }

    private static string With(double value, string unit) =>
        unit.Length == 0 ? Figures.Format(value) : $"{Figures.Format(value)} {unit}";
}
