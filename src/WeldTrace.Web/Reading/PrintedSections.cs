using WeldTrace.Documents;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Sections;

namespace WeldTrace.Web.Reading;

/// <summary>Sections as they are printed, in the traveler and in their own report.</summary>
public static class PrintedSections
{
    /// <summary>Longest side of a printed photograph in pixels: 300 dots per inch across the page.</summary>
    public const int LongestSide = 2200;

    /// <summary>The photograph with what was measured on it.</summary>
    /// <param name="section">Section.</param>
    /// <param name="jpeg">Its photograph, upright.</param>
    public static Documents.Photograph Picture(SectionExamination section, byte[] jpeg)
    {
        ArgumentNullException.ThrowIfNull(section);
        var where = FormattableString.Invariant(
            $"{section.Cut.JointCode} at {section.Cut.Angle.Degrees:0.#}° from the start"
        );
        return new Documents.Photograph(
            jpeg,
            $"Section of {where}; {section.Cut.Etchant}. The numbers are those of the table.",
            $"Photograph of the section of {where} with its measurements."
        )
        {
            Overlay = section.Picture is { SetUp: not null } picture
                ? Overlay(section, picture)
                : null,
        };
    }

    public static IReadOnlyList<MeasurementLine> Measurements(SectionExamination section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return section.Picture is { } picture
            ? [.. picture.Marks.Select(Line)]
            : [.. Typed(section)];
    }

    /// <summary>What was replaced or struck out, with who and why.</summary>
    public static IReadOnlyList<string> Replaced(SectionExamination section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return
        [
            .. (section.Picture?.Corrections ?? []).Select(c =>
                $"Replaced or struck out before the signature: {SectionWords.Of(c)} {c.PrintedName}: {c.Reason}"
            ),
        ];
    }

    private static MeasurementLine Line(PictureMark mark)
    {
        var result = mark.Result;
        var note = mark.Entry.Note.Length > 0 ? $": {mark.Entry.Note}" : "";
        return new MeasurementLine(
            FormattableString.Invariant($"{mark.Number}, {mark.Entry.Name}{note}"),
            result.Size?.Unit ?? "mm"
        )
        {
            Measured = result.Size is { } size
                ? $"{size.Digits} ± {result.Uncertainty?.Digits}"
                : "seen",
            Place = $"{Side(result.Side)}, {result.FromFace} from the face",
            Limit = result.Limit?.AtMost.Digits,
            LimitSource = result.Limit is { } limit ? $"{limit.Formula}; {limit.Source}" : null,
            Verdict = result.Verdict is { } verdict
                ? PrintedMarks.Of(DomainMarks.Of(verdict), TestRecord.VerdictWord(verdict))
                : null,
        };
    }

    private static IEnumerable<MeasurementLine> Typed(SectionExamination section)
    {
        if (section.Measurement is { } typed)
        {
            yield return new MeasurementLine(SectionWords.Of(typed.Imperfection), "mm")
            {
                Measured = typed.Size is null
                    ? null
                    : $"{typed.Size.Digits} ± {typed.SizeUncertainty?.Digits}",
                Limit = typed.Limit?.Digits,
                LimitSource = typed.LimitSource,
                Verdict = PrintedMarks.Of(
                    DomainMarks.Of(section.Verdict),
                    TestRecord.VerdictWord(section.Verdict)
                ),
            };
        }
    }

    private static string Side(WeldSide? side) =>
        side switch
        {
            WeldSide.Advancing => "advancing side",
            WeldSide.Retreating => "retreating side",
            _ => "middle",
        };

    private static PictureOverlay Overlay(SectionExamination section, SectionPicture picture)
    {
        var setUp = picture.SetUp!;
        List<OverlayShape> shapes =
        [
            new("AS", Points([setUp.Face.Advancing, setUp.Face.Retreating]))
            {
                IsDashed = true,
                EndName = "RS",
            },
        ];
        if (setUp is { From: { } from, To: { } to })
        {
            shapes.Add(new("scale", Points([from, to])) { IsDashed = true });
        }

        shapes.AddRange(
            picture.Marks.Select(m => new OverlayShape(
                m.Number.ToString(System.Globalization.CultureInfo.InvariantCulture),
                Points(m.Entry.Points)
            )
            {
                IsClosed = m.Entry.Shape == PictureShape.Area,
            })
        );
        return new PictureOverlay(
            section.Photograph.ShownWidth,
            section.Photograph.ShownHeight,
            setUp.Scale().Value.MicrometresPerPixel,
            shapes
        );
    }

    private static IReadOnlyList<(double X, double Y)> Points(IEnumerable<PicturePoint> points) =>
        [.. points.Select(p => (p.X, p.Y))];
}
