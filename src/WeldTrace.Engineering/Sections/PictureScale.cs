using WeldTrace.Engineering.Quantities;
using static WeldTrace.Engineering.Statistics.StandardUncertainty;

namespace WeldTrace.Engineering.Sections;

/// <summary>
/// How long a pixel of a picture is, with its uncertainty, and how exactly a person points at it. Square pixels; plane geometry and
/// the propagation of uncertainty of the GUM.
/// </summary>
public sealed record PictureScale : IWorked
{
    private const string Source = "Plane geometry; propagation of uncertainty by the GUM.";

    private PictureScale(double perPixel, double relative, double pointing, Working working) =>
        (MicrometresPerPixel, RelativeUncertainty, PointingPixels, Working) = (
            perPixel,
            relative,
            pointing,
            working
        );

    /// <summary>Length of a pixel in µm.</summary>
    public double MicrometresPerPixel { get; }

    /// <summary>Standard uncertainty of that length over the length.</summary>
    public double RelativeUncertainty { get; }

    /// <summary>Standard uncertainty of each coordinate of a point that a person sets, in pixels.</summary>
    public double PointingPixels { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>A length of the picture in millimetres.</summary>
    public double Millimetres(double pixels) => Finite.Require(pixels * MicrometresPerPixel / 1000);

    /// <summary>The scale that follows from a known length on the picture, for instance its scale bar.</summary>
    /// <param name="from">One end.</param>
    /// <param name="to">Other end.</param>
    /// <param name="known">True length between them, above zero.</param>
    /// <param name="knownUncertainty">Standard uncertainty of that length, zero or more.</param>
    /// <param name="pointingPixels">Standard uncertainty of each coordinate of a point, in pixels, zero or more.</param>
    public static Computed<PictureScale> OfKnownLength(
        PicturePoint from,
        PicturePoint to,
        Length known,
        Length knownUncertainty,
        double pointingPixels
    )
    {
        var pixels = from.To(to);
        var check = new InputCheck()
            .Positive("known length", known.Millimetres, "mm")
            .NotNegative("uncertainty of the known length", knownUncertainty.Millimetres, "mm")
            .NotNegative("pointing", pointingPixels, "px")
            .Require(
                pixels >= 10,
                RefusalReason.OutOfRange,
                "known length",
                $"Its ends are only {Figures.Format(pixels)} pixels apart.",
                "Mark a longer known length, at least 10 pixels."
            );
        return check.Compute(() =>
        {
            var perPixel = known.Millimetres * 1000 / pixels;
            var relative = Combine(
                knownUncertainty.Millimetres / known.Millimetres,
                double.Sqrt(2) * pointingPixels / pixels
            );
            var working = Working
                .Of("Scale of the picture", "s = L0/d0; (u_s/s)² = (u_L0/L0)² + 2·(u_p/d0)²")
                .Input("L0", "known length", known.Millimetres, "mm")
                .Input("u_L0", "its standard uncertainty", knownUncertainty.Millimetres, "mm")
                .Input("d0", "its length on the picture, pixels", pixels)
                .Input("u_p", "standard uncertainty of pointing, pixels", pointingPixels)
                .Result("s", "length of a pixel", perPixel, "µm")
                .Result("u_s/s", "relative standard uncertainty", relative)
                .From(Source)
                .Build();
            return new PictureScale(perPixel, relative, pointingPixels, working);
        });
    }

    /// <summary>The scale that a calibrated microscope or camera states.</summary>
    /// <param name="micrometresPerPixel">Length of a pixel in µm, above zero.</param>
    /// <param name="micrometresUncertainty">Its standard uncertainty in µm, zero or more.</param>
    /// <param name="pointingPixels">Standard uncertainty of each coordinate of a point, in pixels, zero or more.</param>
    public static Computed<PictureScale> OfPixel(
        double micrometresPerPixel,
        double micrometresUncertainty,
        double pointingPixels
    )
    {
        var check = new InputCheck()
            .Positive("length of a pixel", micrometresPerPixel, "µm")
            .NotNegative("its uncertainty", micrometresUncertainty, "µm")
            .NotNegative("pointing", pointingPixels, "px");
        return check.Compute(() =>
        {
            var relative = micrometresUncertainty / micrometresPerPixel;
            var working = Working
                .Of("Scale of the picture", "s as calibrated")
                .Input("s", "length of a pixel", micrometresPerPixel, "µm")
                .Input("u_s", "its standard uncertainty", micrometresUncertainty, "µm")
                .Input("u_p", "standard uncertainty of pointing, pixels", pointingPixels)
                .Result("u_s/s", "relative standard uncertainty", relative)
                .From(Source)
                .Build();
            return new PictureScale(micrometresPerPixel, relative, pointingPixels, working);
        });
    }
}
