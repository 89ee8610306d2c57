using System.Globalization;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Forms;
using Written = WeldTrace.Engineering.Figures;

namespace WeldTrace.Web.Features.Desk;

/// <summary>One field of a desk page.</summary>
/// <param name="Name">Name in the address.</param>
/// <param name="Label">What it is, in words.</param>
/// <param name="Initial">What stands in it at first: an example, in metric units.</param>
public sealed record DeskField(string Name, string Label, string Initial)
{
    private readonly Func<UnitSystem, Unit>? _unit;

    public FieldKind Kind { get; init; } = FieldKind.Number;

    /// <summary>Unit that is the same in every system, for instance <c>%</c>; null when the system decides, or for a plain number.</summary>
    public string? FixedUnit { get; init; }

    public IReadOnlyList<FieldOption> Options { get; init; } = [];

    public string? Hint { get; init; }

    public bool Optional { get; init; }

    /// <summary>What the computations call it when they refuse it.</summary>
    public IReadOnlyList<string> Called { get; init; } = [];

    /// <summary>A quantity, entered in the units of the sheet.</summary>
    public static DeskField Of<TQuantity>(
        string name,
        string label,
        string initial,
        UnitScale scale = UnitScale.Usual
    )
        where TQuantity : struct, IQuantity<TQuantity> =>
        new(name, label, initial, system => SiteUnit.For<TQuantity>(system, scale));

    /// <summary>One of a list.</summary>
    public static DeskField Choice(
        string name,
        string label,
        string initial,
        params IReadOnlyList<FieldOption> options
    ) => new(name, label, initial) { Kind = FieldKind.Select, Options = options };

    private DeskField(string name, string label, string initial, Func<UnitSystem, Unit> unit)
        : this(name, label, initial) => _unit = unit;

    /// <summary>The unit of the quantity in a system; null for what is no quantity.</summary>
    public Unit? UnitIn(UnitSystem system) => _unit?.Invoke(system);

    /// <summary>The unit as it stands beside the field.</summary>
    public string? UnitSymbol(UnitSystem system) => UnitIn(system)?.Symbol ?? FixedUnit;

    /// <summary>What stands in the field at first.</summary>
    public string InitialIn(UnitSystem system) =>
        Converted(Initial, UnitSystem.Metric, system, digits: 4);

    /// <summary>The same quantity in another system; what is no number stays as it is.</summary>
    public string Converted(string typed, UnitSystem from, UnitSystem to, int digits = 7) =>
        from != to
        && UnitIn(from) is { } old
        && UnitIn(to) is { } unit
        && TryRead(typed, out var number)
            ? Written.Format(old.To(unit, number), digits)
            : typed;

    /// <summary>Reads a number with a decimal point or comma; a power of ten may follow.</summary>
    public static bool TryRead(string typed, out double number) =>
        double.TryParse(
            typed.Trim().Replace(',', '.'),
            NumberStyles.Float,
            CultureInfo.InvariantCulture,
            out number
        ) && double.IsFinite(number);
}

/// <summary>Fields that belong together.</summary>
public sealed record DeskGroup(string Legend, params IReadOnlyList<DeskField> Fields);
