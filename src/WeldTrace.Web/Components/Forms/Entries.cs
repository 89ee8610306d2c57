using System.Globalization;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Components.Forms;

/// <summary>Reads what was typed into a form and collects everything that is no number, so that all of it is told at once.</summary>
public sealed class Entries
{
    private readonly List<Refusal> _refusals = [];

    /// <summary>What could not be read.</summary>
    public IReadOnlyList<Refusal> Refusals => _refusals;

    /// <summary>A number with its digits as typed; 0 stands in for what could not be read.</summary>
    /// <param name="text">Typed text.</param>
    /// <param name="unit">Unit that the label says.</param>
    /// <param name="what">Name of the value, to begin a sentence.</param>
    /// <param name="field">Name of the field.</param>
    public Measured Number(string? text, string unit, string what, string field)
    {
        if (Measured.TryRead(text, unit, out var measured))
        {
            return measured;
        }

        Refuse(text, $"in {Typed.Shorten(unit)}, digits with a decimal point", what, field);
        return new Measured("0", unit);
    }

    /// <summary>A number that may be left out.</summary>
    public Measured? OptionalNumber(string? text, string unit, string what, string field) =>
        string.IsNullOrWhiteSpace(text) ? null : Number(text, unit, what, field);

    /// <summary>A whole number; 0 stands in for what could not be read.</summary>
    public int Whole(string? text, string unit, string what, string field)
    {
        if (
            int.TryParse(
                text,
                NumberStyles.AllowLeadingSign
                    | NumberStyles.AllowLeadingWhite
                    | NumberStyles.AllowTrailingWhite,
                CultureInfo.InvariantCulture,
                out var number
            )
        )
        {
            return number;
        }

        Refuse(text, $"in whole {Typed.Shorten(unit)}", what, field);
        return 0;
    }

    /// <summary>A whole number that may be left out.</summary>
    public int? OptionalWhole(string? text, string unit, string what, string field) =>
        string.IsNullOrWhiteSpace(text) ? null : Whole(text, unit, what, field);

    /// <summary>One of the named choices; the first stands in for what is none.</summary>
    public T Choice<T>(string? text, string what, string field)
        where T : struct, Enum
    {
        if (Enum.GetNames<T>().Contains(text))
        {
            return Enum.Parse<T>(text!);
        }

        _refusals.Add(new Refusal("choice", $"{what}: choose one from the list.", field));
        return default;
    }

    /// <summary>A day.</summary>
    public DateOnly Day(DateOnly? typed, string what, string field)
    {
        if (typed is null)
        {
            _refusals.Add(new Refusal("day", $"Give {what}.", field));
        }

        return typed ?? default;
    }

    /// <summary>A day as a date field takes it.</summary>
    public static string? Show(DateOnly? day) =>
        day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private void Refuse(string? text, string how, string what, string field) =>
        _refusals.Add(
            new Refusal(
                "number",
                string.IsNullOrWhiteSpace(text)
                    ? $"{what} is missing; enter it {how}."
                    : $"{what}: '{Typed.Shorten(text.Trim())}' is no number; enter it {how}.",
                field
            )
        );
}
