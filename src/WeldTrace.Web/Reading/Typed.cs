using System.Globalization;
using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Reading;

/// <summary>Numbers as people type them.</summary>
public static class Typed
{
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
            decimal.TryParse(
                text?.Replace(',', '.'),
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
                    : $"{what}: '{text}' is no number; use digits and a decimal point.",
                field
            )
        );
        return null;
    }
}
