namespace WeldTrace.Domain.Sectioning;

/// <summary>What was recorded of a section, in labels and values as read and printed.</summary>
public static class SectionText
{
    /// <summary>Everything but the place, the measurements and the verdict.</summary>
    public static IReadOnlyList<(string Label, string Value)> Of(SectionExamination section)
    {
        ArgumentNullException.ThrowIfNull(section);
        var cut = section.Cut;
        List<(string, string?)> lines =
        [
            ("Specimen", cut.Specimen),
            ("Plane", cut.Plane),
            (
                "Section",
                cut.IsMicroscopic switch
                {
                    true => "microscopic",
                    false => "macroscopic",
                    null => null,
                }
            ),
            ("Etchant", cut.Etchant),
            ("Magnification or scale", cut.Magnification),
            .. Standards(section.Standards),
            .. Typed(section.Measurement),
            ("Scale of the picture", Scale(section.Picture?.SetUp)),
        ];
        return
        [
            .. lines
                .Where(l => !string.IsNullOrWhiteSpace(l.Item2))
                .Select(l => (l.Item1, l.Item2!)),
        ];
    }

    private static IEnumerable<(string, string?)> Standards(SectionStandards? standards)
    {
        if (standards is null)
        {
            yield break;
        }

        yield return ("Method", $"{standards.Method}, {standards.MethodEdition}");
        yield return ("Written procedure", standards.WrittenProcedure);
        yield return (
            "Acceptance",
            $"{standards.Limits.Label}: {standards.Limits.Source}{(standards.Limits.WasChecked ? "" : "; not checked against an own copy")}"
        );
        yield return (
            "Thickness t",
            FormattableString.Invariant($"{standards.Thickness.Millimetres:0.###} mm")
        );
    }

    private static IEnumerable<(string, string?)> Typed(SectionMeasurement? typed)
    {
        if (typed is null)
        {
            yield break;
        }

        yield return ("Imperfection", SectionWords.Of(typed.Imperfection));
        yield return (
            "Size",
            typed.Size is null ? null : $"{typed.Size} ± {typed.SizeUncertainty}"
        );
        yield return ("Limit", typed.Limit is null ? "none permitted" : $"at most {typed.Limit}");
        yield return ("Source of the limit", typed.LimitSource);
        yield return ("Side", typed.Side?.ToString().ToLowerInvariant());
        yield return ("Distance from the face", typed.DistanceFromFace?.ToString());
    }

    private static string? Scale(PictureSetUp? setUp) =>
        setUp is null ? null
        : setUp.PixelLength is { } pixel
            ? $"{pixel} a pixel, standard uncertainty {setUp.PixelUncertainty}; pointing {setUp.Pointing}"
        : FormattableString.Invariant(
            $"{setUp.Scale().Value.MicrometresPerPixel:0.####} µm a pixel, from a known length of {setUp.KnownLength}, standard uncertainty {setUp.KnownUncertainty}; pointing {setUp.Pointing}"
        );
}
