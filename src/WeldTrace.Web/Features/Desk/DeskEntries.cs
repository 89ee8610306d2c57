using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Desk;

/// <summary>Reads what was typed into a desk page and collects everything that is wrong with it, each at its field.</summary>
public sealed class DeskEntries(
    IReadOnlyList<DeskField> fields,
    IReadOnlyDictionary<string, string> typed,
    UnitSystem units
)
{
    /// <summary>Nothing that is welded or tested is larger in the units of these pages; keeps the wrong unit out.</summary>
    private const double Largest = 1e9;

    private const int LongestShown = 30;

    private readonly List<FieldFault> _faults = [];
    private readonly List<Working> _workings = [];

    public UnitSystem Units => units;

    public IReadOnlyList<FieldFault> Faults => _faults;

    public bool AreClean => _faults.Count == 0;

    /// <summary>Workings of the computations that were taken, in their order.</summary>
    public IReadOnlyList<Working> Workings => _workings;

    /// <summary>What was typed, without spaces around it.</summary>
    public string Text(string name) => typed.GetValueOrDefault(name, "").Trim();

    public bool IsEmpty(string name) => Text(name).Length == 0;

    /// <summary>A quantity in the units of the sheet; zero stands in for what could not be read.</summary>
    public T Quantity<T>(string name)
        where T : struct, IQuantity<T>
    {
        var field = Field(name);
        var unit = field.UnitIn(units)!;
        try
        {
            return T.FromSi(unit.ToSi(Number(name)));
        }
        catch (ArgumentOutOfRangeException)
        {
            // A temperature below absolute zero.
            Refuse(
                name,
                $"{field.Label}: {Shorten(Text(name))} {unit.Symbol} is not possible; check sign and unit."
            );
            return default;
        }
    }

    /// <summary>A quantity that may be left out.</summary>
    public T? OptionalQuantity<T>(string name)
        where T : struct, IQuantity<T> => IsEmpty(name) ? null : Quantity<T>(name);

    /// <summary>A plain number, or one in a fixed unit.</summary>
    public double Number(string name)
    {
        var (field, text) = (Field(name), Text(name));
        if (text.Length > 0 && DeskField.TryRead(text, out var number))
        {
            if (Math.Abs(number) < Largest)
            {
                return number;
            }

            Refuse(name, $"{field.Label}: {Shorten(text)} is of no sensible size; check the unit.");
            return 0;
        }

        var how = field.UnitSymbol(units) is { } unit ? $"in {unit}, " : "";
        Refuse(
            name,
            text.Length == 0
                ? $"{field.Label} is missing; enter it {how}digits with a decimal point."
                : $"{field.Label}: '{Shorten(text)}' is no number; enter it {how}digits with a decimal point."
        );
        return 0;
    }

    /// <summary>A number that may be left out.</summary>
    public double? OptionalNumber(string name) => IsEmpty(name) ? null : Number(name);

    /// <summary>A share that is entered in per cent.</summary>
    public double Part(string name, double leastPercent, double mostPercent)
    {
        var faults = _faults.Count;
        var percent = Number(name);
        if (_faults.Count == faults && !(percent >= leastPercent && percent <= mostPercent))
        {
            Refuse(
                name,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Field(name).Label} is {percent} %; enter {leastPercent} to {mostPercent} %."
                )
            );
        }

        return percent / 100;
    }

    /// <summary>A time of zero or more.</summary>
    /// <param name="name">Field.</param>
    /// <param name="secondsPerUnit">Seconds of the field's unit.</param>
    public TimeSpan Time(string name, double secondsPerUnit = 1)
    {
        const double tenYears = 3.2e8;
        var number = Number(name);
        var seconds = number * secondsPerUnit;
        if (seconds is >= 0 and < tenYears)
        {
            return TimeSpan.FromSeconds(seconds);
        }

        Refuse(
            name,
            $"{Field(name).Label} is {Shorten(Text(name))} {Field(name).FixedUnit}; enter zero or more, and less than ten years."
        );
        return TimeSpan.Zero;
    }

    /// <summary>A whole number within limits; the least stands in for what could not be read.</summary>
    public int Whole(string name, int least, int most)
    {
        if (
            int.TryParse(
                Text(name),
                NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture,
                out var number
            )
            && number >= least
            && number <= most
        )
        {
            return number;
        }

        Refuse(
            name,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Field(name).Label}: enter a whole number from {least} to {most}."
            )
        );
        return least;
    }

    /// <summary>One of the named choices; the first stands in for what is none.</summary>
    public T Choice<T>(string name)
        where T : struct, Enum
    {
        if (Enum.GetNames<T>().Contains(Text(name)))
        {
            return Enum.Parse<T>(Text(name));
        }

        Refuse(name, $"{Field(name).Label}: choose one from the list.");
        return default;
    }

    /// <summary>The value of one of the offered options; the first stands in for what is none.</summary>
    public string Option(string name)
    {
        var options = Field(name).Options;
        if (options.Any(o => o.Value == Text(name)))
        {
            return Text(name);
        }

        Refuse(name, $"{Field(name).Label}: choose one from the list.");
        return options[0].Value;
    }

    /// <summary>Takes a result with its working; a refusal goes to the field that it is about.</summary>
    /// <param name="computed">What was computed.</param>
    /// <param name="value">The result.</param>
    /// <param name="suffix">Ending of the names of the fields that are meant, where a page asks for something twice.</param>
    public bool Take<T>(
        Computed<T> computed,
        [MaybeNullWhen(false)] out T value,
        string suffix = ""
    )
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(computed);
        foreach (var refusal in computed.Refusals)
        {
            var field =
                fields.FirstOrDefault(f =>
                    suffix.Length > 0
                    && f.Called.Contains(refusal.Where)
                    && f.Name.EndsWith(suffix, StringComparison.Ordinal)
                ) ?? fields.FirstOrDefault(f => f.Called.Contains(refusal.Where));
            Refuse(
                field?.Name ?? "",
                $"{field?.Label ?? Capital(refusal.Where)}: {refusal.What} {refusal.Mend}"
            );
        }

        if (!computed.TryGet(out value))
        {
            return false;
        }

        _workings.Add(computed.Working);
        return true;
    }

    /// <summary>Says what is wrong with a field, or with the whole when the name is empty.</summary>
    public void Refuse(string name, string sentence)
    {
        if (!_faults.Any(f => f.Field == name && f.Sentence == sentence))
        {
            _faults.Add(new FieldFault(name, sentence));
        }
    }

    /// <summary>A quantity as it is shown on this sheet.</summary>
    public string Show<T>(T quantity, UnitScale scale = UnitScale.Usual, int digits = 4)
        where T : struct, IQuantity<T> => UnitText.For(quantity, units, digits, scale).ToString();

    /// <summary>The start of a text that may be long.</summary>
    public static string Shorten(string text) =>
        text.Length <= LongestShown ? text : text[..(LongestShown - 1)] + "…";

    private DeskField Field(string name) => fields.First(f => f.Name == name);

    private static string Capital(string words) =>
        words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
