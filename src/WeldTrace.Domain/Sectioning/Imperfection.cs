namespace WeldTrace.Domain.Sectioning;

/// <summary>Imperfections of friction-stir welds that a section can show (terms of ISO 25239-1 and -5).</summary>
public enum Imperfection
{
    /// <summary>Nothing to report.</summary>
    None,

    /// <summary>Faying surface bent beside the stirred metal.</summary>
    Hook,

    /// <summary>Void in the stirred metal.</summary>
    Cavity,

    /// <summary>Trace of the original faying surface or oxide.</summary>
    JointRemnant,

    /// <summary>Thickness not welded through.</summary>
    IncompletePenetration,

    /// <summary>Face below the surface of the parent material.</summary>
    Underfill,

    /// <summary>Metal pushed out along the toe.</summary>
    ToeFlash,

    /// <summary>Surfaces parallel but offset.</summary>
    LinearMisalignment,

    /// <summary>Crack of any size.</summary>
    Crack,

    /// <summary>Metal beyond the root.</summary>
    ExcessPenetration,
}

/// <summary>A dimension that is measured and reported without a limit.</summary>
public enum SectionDimension
{
    /// <summary>Width of the stirred metal.</summary>
    NuggetWidth,

    /// <summary>Thickness of the joint at the section.</summary>
    Thickness,

    /// <summary>Anything else; its note says what.</summary>
    Other,
}

/// <summary>Words for what a section shows.</summary>
public static class SectionWords
{
    /// <summary>The trade's words for an imperfection, as the tables of limits name it.</summary>
    public static string Of(Imperfection imperfection) =>
        imperfection switch
        {
            Imperfection.None => "no imperfection",
            Imperfection.Hook => "hook",
            Imperfection.Cavity => "cavity",
            Imperfection.JointRemnant => "joint remnant",
            Imperfection.IncompletePenetration => "incomplete penetration",
            Imperfection.Underfill => "underfill",
            Imperfection.ToeFlash => "toe flash",
            Imperfection.LinearMisalignment => "linear misalignment",
            Imperfection.Crack => "crack",
            Imperfection.ExcessPenetration => "excess penetration",
            _ => throw new ArgumentOutOfRangeException(
                nameof(imperfection),
                imperfection,
                "Unknown imperfection."
            ),
        };

    /// <summary>The words for a dimension.</summary>
    public static string Of(SectionDimension dimension) =>
        dimension switch
        {
            SectionDimension.NuggetWidth => "nugget width",
            SectionDimension.Thickness => "thickness",
            SectionDimension.Other => "other dimension",
            _ => throw new ArgumentOutOfRangeException(
                nameof(dimension),
                dimension,
                "Unknown dimension."
            ),
        };

    /// <summary>The words for a shape that is drawn on the picture.</summary>
    public static string Of(PictureShape shape) =>
        shape switch
        {
            PictureShape.Line => "line",
            PictureShape.Angle => "angle",
            PictureShape.Area => "area",
            PictureShape.Point => "point",
            _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "Unknown shape."),
        };

    /// <summary>What was replaced or struck, as it stood.</summary>
    public static string Of(PictureCorrection correction)
    {
        ArgumentNullException.ThrowIfNull(correction);
        return correction switch
        {
            { Mark: { } mark } => FormattableString.Invariant(
                $"{mark.Number}, {mark.Entry.Name}: {mark.Result.Size?.ToString() ?? "seen"}{(mark.Result.Uncertainty is { } u ? $" ± {u}" : "")}."
            ),
            { SetUp.PixelLength: { } pixel } => $"Scale: {pixel} a pixel.",
            { SetUp.KnownLength: { } known } => $"Scale: known length {known}.",
            _ => "Scale.",
        };
    }
}
