using WeldTrace.Engineering.Materials;

namespace WeldTrace.Engineering.Joints;

/// <summary>Typical joint efficiencies and single published results.</summary>
public static class PublishedJoints
{
    private const string Review =
        "Mishra and Ma 2005, Mater. Sci. Eng. R 50, joint-efficiency table";

    /// <summary>All figures known here.</summary>
    public static IReadOnlyList<PublishedFigure> All { get; } =
    [
        Range("2219-T87", 0.65, 0.75),
        Range("6061-T6", 0.67, 0.80),
        Range("7075-T651/T73", 0.70, 0.80),
        Range("2195-T8", 0.66, 0.75),
        Range("2014-T6", 0.68, 0.75),
        Range("7050-T7451", 0.77, 0.81),
        Single(
            "2024-T3 1.6 mm FSW, best joint efficiency",
            0.87,
            "",
            "Materials 2024 17(7):1452 (abstract)"
        ),
        Single(
            "AA2024 FSW maximum tensile strength",
            368.76,
            "MPa",
            "J. New Mater. Electrochem. Syst. 23(2) 2020 (abstract)"
        ),
        Single(
            "AA2024 FSW maximum nugget hardness",
            147.6,
            "",
            "J. New Mater. Electrochem. Syst. 23(2) 2020 (abstract)"
        ),
        Single(
            "AA6061-T651 6 mm FSW, stir zone hardness maximum",
            120,
            "",
            "Int. J. Mech. Mater. Eng. 2020 (abstract)"
        ),
    ];

    /// <summary>Typical range of joint efficiency of an alloy with temper; null when none is known.</summary>
    public static PublishedFigure? TypicalEfficiency(string? alloyAndTemper) =>
        All.FirstOrDefault(figure =>
            figure.High > figure.Low
            && figure.Subject.StartsWith($"{alloyAndTemper} ", StringComparison.OrdinalIgnoreCase)
        );

    private static PublishedFigure Range(string alloy, double low, double high) =>
        new(
            $"{alloy} FSW joint efficiency, typical range",
            low,
            high,
            "",
            Evidence.FromMemory,
            Review
        );

    private static PublishedFigure Single(
        string subject,
        double value,
        string unit,
        string source
    ) => new(subject, value, value, unit, Evidence.Read, source);
}
