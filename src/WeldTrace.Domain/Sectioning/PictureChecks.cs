using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Sections;

namespace WeldTrace.Domain.Sectioning;

/// <summary>Checks what somebody draws on a picture.</summary>
internal static class PictureChecks
{
    public const int MostPoints = 200;

    public static void SetUp(Checks checks, Photograph photograph, PictureSetUp setUp)
    {
        checks.That(
            setUp.PixelLength is null || setUp.KnownLength is null,
            "scale",
            "Give the known length or the length of a pixel, not both.",
            nameof(PictureSetUp.PixelLength)
        );
        if (setUp.PixelLength is null)
        {
            checks.That(
                setUp is { From: not null, To: not null, KnownLength: not null },
                "scale",
                "Without a scale nothing on the picture has a size: mark both ends of a known length and give it, or give the length of a pixel.",
                nameof(PictureSetUp.KnownLength)
            );
            Inside(checks, photograph, [setUp.From ?? default, setUp.To ?? default], "KnownPoints");
        }

        var face = setUp.Face;
        Inside(checks, photograph, [face.Advancing, face.Retreating], nameof(PictureSetUp.Face));
        checks.That(
            face.Width() >= 10,
            "face",
            "Draw the weld face from its edge on the advancing side to its edge on the retreating side; the two points lie less than 10 pixels apart.",
            nameof(PictureSetUp.Face)
        );
        if (checks.AllHold && setUp.Scale() is { IsRefused: true } refused)
        {
            foreach (var refusal in refused.Refusals)
            {
                checks.That(
                    false,
                    "scale",
                    $"Scale, {refusal.Where}: {refusal.What} {refusal.Mend}",
                    nameof(PictureSetUp.KnownLength)
                );
            }
        }
    }

    public static void Mark(Checks checks, Photograph photograph, MarkEntry entry)
    {
        var (least, most) = entry.Shape switch
        {
            PictureShape.Point => (1, 1),
            PictureShape.Line => (2, 2),
            PictureShape.Angle => (3, 3),
            _ => (3, MostPoints),
        };
        var word = SectionWords.Of(entry.Shape);
        checks
            .That(
                entry.Points.Count >= least && entry.Points.Count <= most,
                "points",
                least == most
                    ? $"This shape, {word}, needs exactly {least} point{(least == 1 ? "" : "s")}; {entry.Points.Count} are set."
                    : $"This shape, {word}, needs {least} to {most} points; {entry.Points.Count} are set.",
                nameof(MarkEntry.Points)
            )
            .That(
                entry.Points.Zip(entry.Points.Skip(1)).All(p => p.First.To(p.Second) >= 1),
                "points",
                "Two points that follow each other lie on the same pixel; set one of them elsewhere.",
                nameof(MarkEntry.Points)
            )
            .That(
                (entry.Imperfection == Imperfection.None) == (entry.Dimension is not null),
                "subject",
                "Say what is measured: an imperfection or a dimension.",
                "Subject"
            )
            .That(
                entry.Dimension != SectionDimension.Other || entry.Note.Length > 0,
                "note",
                "Say in the note what is measured.",
                nameof(MarkEntry.Note)
            )
            .That(
                entry.Note.Length <= SectionExamination.LongestText,
                "note",
                $"Keep the note within {SectionExamination.LongestText} characters.",
                nameof(MarkEntry.Note)
            )
            .That(
                entry.Shape != PictureShape.Angle || entry.Dimension is not null,
                "shape",
                "Imperfections are judged by a length; draw a line or an area, or report the angle as a dimension.",
                nameof(MarkEntry.Shape)
            );
        Inside(checks, photograph, entry.Points, nameof(MarkEntry.Points));
    }

    /// <summary>A measurement outside the picture measures nothing.</summary>
    private static void Inside(
        Checks checks,
        Photograph photograph,
        IReadOnlyList<PicturePoint> points,
        string field
    )
    {
        var (width, height) = (photograph.ShownWidth, photograph.ShownHeight);
        for (var i = 0; i < points.Count; i++)
        {
            var (x, y) = (points[i].X, points[i].Y);
            checks.That(
                x >= 0 && x <= width && y >= 0 && y <= height,
                "outside",
                FormattableString.Invariant(
                    $"Point {i + 1} ({x:0.#}, {y:0.#}) lies outside the picture of {width} × {height} pixels; set it again on the picture."
                ),
                field
            );
        }
    }
}
