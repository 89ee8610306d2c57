using WeldTrace.Domain.Limits;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Sections;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Sectioning;

/// <summary>What is drawn on the picture.</summary>
public enum PictureShape
{
    /// <summary>Two points.</summary>
    Line,

    /// <summary>Three points, the corner in the middle.</summary>
    Angle,

    /// <summary>Three or more corners in order.</summary>
    Area,

    /// <summary>One point: seen there, without a size.</summary>
    Point,
}

/// <summary>How the picture's scale was found, and where the weld face lies on it.</summary>
/// <param name="From">One end of the known length; null when the length of a pixel is given.</param>
/// <param name="To">Other end of the known length.</param>
/// <param name="KnownLength">The known length, in mm; null when the length of a pixel is given.</param>
/// <param name="KnownUncertainty">Its standard uncertainty, in mm.</param>
/// <param name="PixelLength">Length of a pixel in µm; null when a known length is given.</param>
/// <param name="PixelUncertainty">Its standard uncertainty, in µm.</param>
/// <param name="Pointing">Standard uncertainty of each coordinate of a point, in pixels.</param>
/// <param name="Face">Weld face.</param>
public sealed record PictureSetUp(
    PicturePoint? From,
    PicturePoint? To,
    Measured? KnownLength,
    Measured? KnownUncertainty,
    Measured? PixelLength,
    Measured? PixelUncertainty,
    Measured Pointing,
    FaceLine Face
)
{
    /// <summary>The scale, or why there is none.</summary>
    public Engineering.Computed<PictureScale> Scale() =>
        PixelLength is { } pixel
            ? PictureScale.OfPixel(
                pixel.InUnit(),
                PixelUncertainty?.InUnit() ?? 0,
                Pointing.InUnit()
            )
            : PictureScale.OfKnownLength(
                From ?? default,
                To ?? default,
                Engineering.Quantities.Length.FromMillimetres(KnownLength?.InUnit() ?? 0),
                Engineering.Quantities.Length.FromMillimetres(KnownUncertainty?.InUnit() ?? 0),
                Pointing.InUnit()
            );
}

/// <summary>What somebody draws on the picture and says of it.</summary>
/// <param name="Shape">Shape.</param>
/// <param name="Points">Its points in pixels of the picture as shown.</param>
/// <param name="Imperfection">Imperfection; none for a dimension.</param>
/// <param name="Dimension">Dimension; null for an imperfection.</param>
/// <param name="DesignLimit">Greatest size of the design specification in mm, where the table has none.</param>
/// <param name="DesignDocument">The design specification with its clause.</param>
/// <param name="Note">Anything worth telling; may be empty.</param>
public sealed record MarkEntry(
    PictureShape Shape,
    IReadOnlyList<PicturePoint> Points,
    Imperfection Imperfection,
    SectionDimension? Dimension,
    Measured? DesignLimit,
    string? DesignDocument,
    string Note
)
{
    /// <summary>What it is, in words.</summary>
    public string Name =>
        Dimension is { } dimension ? SectionWords.Of(dimension) : SectionWords.Of(Imperfection);
}

/// <summary>What follows from a mark, the scale and the limit.</summary>
/// <param name="Size">Length, greatest extent or angle; null for a point.</param>
/// <param name="Uncertainty">Expanded uncertainty of the size, k = 2.</param>
/// <param name="Area">Area in mm²; null unless an area was drawn.</param>
/// <param name="Side">Side of the weld; null when it can't be told from the middle of the face.</param>
/// <param name="FromMiddle">Distance from the middle of the face along it, in mm.</param>
/// <param name="FromFace">Distance of its nearest point from the face, in mm.</param>
/// <param name="Limit">Limit; null for a dimension.</param>
/// <param name="Verdict">Verdict; null for a dimension.</param>
/// <param name="Sentence">The verdict in words; empty for a dimension.</param>
public sealed record MarkResult(
    Measured? Size,
    Measured? Uncertainty,
    Measured? Area,
    WeldSide? Side,
    Measured FromMiddle,
    Measured FromFace,
    AppliedLimit? Limit,
    Verdict? Verdict,
    string Sentence
);

/// <summary>A measurement on the picture.</summary>
/// <param name="Number">Number beside it on the picture, from 1; never used again.</param>
/// <param name="Entry">As drawn.</param>
/// <param name="Result">What follows.</param>
public sealed record PictureMark(int Number, MarkEntry Entry, MarkResult Result);

/// <summary>What was replaced or struck before the section was signed.</summary>
/// <param name="Mark">Measurement as it was; null when the scale was replaced.</param>
/// <param name="SetUp">Scale and face as they were; null when a measurement was replaced.</param>
/// <param name="Reason">Why; 1 to 400 characters.</param>
/// <param name="PersonId">Who.</param>
/// <param name="PrintedName">Printed name of that person.</param>
/// <param name="At">UTC instant.</param>
public sealed record PictureCorrection(
    PictureMark? Mark,
    PictureSetUp? SetUp,
    string Reason,
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At
);

/// <summary>Everything measured on the photograph of a section, kept apart from its bytes.</summary>
/// <param name="SetUp">Scale and face; null while they are not set.</param>
/// <param name="Marks">Measurements in the order of their numbers.</param>
/// <param name="Corrections">What was replaced or struck.</param>
/// <param name="Seen">What the examiner says of the whole section; null while it is not concluded.</param>
public sealed record SectionPicture(
    PictureSetUp? SetUp,
    IReadOnlyList<PictureMark> Marks,
    IReadOnlyList<PictureCorrection> Corrections,
    string? Seen
)
{
    /// <summary>A picture on which nothing was measured yet.</summary>
    public static SectionPicture Blank { get; } = new(null, [], [], null);

    /// <summary>The measurement of a number; null when there is none.</summary>
    public PictureMark? Mark(int number) => Marks.FirstOrDefault(m => m.Number == number);

    /// <summary>Number that the next measurement gets.</summary>
    public int NextNumber =>
        1
        + Marks
            .Select(m => m.Number)
            .Concat(Corrections.Select(c => c.Mark?.Number ?? 0))
            .DefaultIfEmpty(0)
            .Max();
}
