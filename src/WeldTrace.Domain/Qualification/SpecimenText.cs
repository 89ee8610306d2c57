using WeldTrace.Engineering.Joints;

namespace WeldTrace.Domain.Qualification;

/// <summary>What was entered for a result, in labels and values as read and printed.</summary>
public static class SpecimenText
{
    /// <summary>Everything entered, the verdict left out.</summary>
    public static IReadOnlyList<(string Label, string Value)> Of(SpecimenTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        var header = test.Header;
        List<(string, string)> lines =
        [
            ("Method", $"{header.Method}, {header.MethodEdition}"),
            ("Acceptance", $"{header.Acceptance}, {header.AcceptanceEdition}"),
            ("Tested on", FormattableString.Invariant($"{header.TestedOn:yyyy-MM-dd}")),
            ("Tested by", test.TesterName),
            ("Instrument", test.Instrument?.Label ?? ""),
            ("Written procedure", header.WrittenProcedure),
            .. Measured(test.Entry),
            ("Remark", header.Remark),
        ];
        return [.. lines.Where(l => l.Item2.Length > 0)];
    }

    /// <summary>The words for where a tensile specimen broke.</summary>
    public static string Of(FracturePlace place) =>
        place switch
        {
            FracturePlace.Unknown => "not recorded",
            FracturePlace.Parent => "parent material",
            FracturePlace.HeatAffectedZone => "heat-affected zone",
            FracturePlace.ThermoMechanicalZone => "thermo-mechanically affected zone",
            FracturePlace.Nugget => "stirred zone",
            _ => throw new ArgumentOutOfRangeException(nameof(place), place, "Unknown place."),
        };

    private static IEnumerable<(string Label, string Value)> Measured(SpecimenEntry entry)
    {
        if (entry.Tensile is { } tensile)
        {
            yield return ("Section", $"{tensile.Width} by {tensile.Thickness}");
            yield return ("Highest force", tensile.Force.ToString());
            yield return ("Broke in", Of(tensile.Place));
        }

        if (entry.Bend is { } bend)
        {
            yield return ("Former", bend.Former.ToString());
            yield return ("Angle reached", bend.Angle.ToString());
            yield return ("Longest crack", bend.LongestCrack.ToString());
        }

        if (entry.Value is { } value)
        {
            yield return ("Value", value.Value.ToString());
            yield return ("Single values", value.Series);
        }

        if (entry.Examination is { } examination)
        {
            yield return ("Seen", examination.Findings);
            foreach (var imperfection in examination.Imperfections)
            {
                var limit = imperfection.DesignLimit is { } design
                    ? $", limit of the design {design}"
                    : "";
                yield return ("Imperfection", $"{imperfection.Name} {imperfection.Size}{limit}");
            }
        }
    }
}
