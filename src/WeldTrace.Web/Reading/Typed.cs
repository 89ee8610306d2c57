using System.Globalization;
using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Reading;

/// <summary>Numbers as people type them.</summary>
public static class Typed
{
    // As many as a measured value may have; more would be no quantity of this trade, and too large to reckon with.
    private const int LongestNumber = 24;
    private const int LongestTold = 30;

    private const NumberStyles Style =
        NumberStyles.AllowLeadingSign
        | NumberStyles.AllowDecimalPoint
        | NumberStyles.AllowLeadingWhite
        | NumberStyles.AllowTrailingWhite;

    /// <summary>A number with a decimal point or comma; null with a refusal when it is none.</summary>
    public static decimal? Number(string? text, string what, string field, List<Refusal> refusals)
    {
        ArgumentNullException.ThrowIfNull(refusals);
        if (
            text?.Trim().Length <= LongestNumber
            && decimal.TryParse(
                text.Replace(',', '.'),
                Style,
                CultureInfo.InvariantCulture,
                out var value
            )
        )
        {
            return value;
        }

        refusals.Add(
            new Refusal(
                "number",
                string.IsNullOrWhiteSpace(text)
                    ? $"{what}: give a number."
                    : $"{what}: '{Shorten(text.Trim())}' is no number; use up to {LongestNumber} digits and a decimal point.",
                field
            )
        );
        return null;
    }

    /// <summary>As much of a typed text as is told again beside what is wrong with it.</summary>
    public static string Shorten(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length <= LongestTold ? text : text[..(LongestTold - 1)] + "…";
    }
}
