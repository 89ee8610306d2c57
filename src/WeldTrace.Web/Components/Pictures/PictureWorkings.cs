using WeldTrace.Domain.Sectioning;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Components.Pictures;

/// <summary>Addresses of the workings of a section's picture: its scale and what was measured on it.</summary>
public static class PictureWorkings
{
    /// <summary>Kind of record under which they are asked for.</summary>
    public const string Kind = "tests";

    /// <summary>Name of the working of the scale.</summary>
    public const string ScaleKey = "scale";

    /// <summary>Name of the working of a measurement.</summary>
    public static string MeasurementKey(int number) =>
        FormattableString.Invariant($"measurement-{number}");

    public static string Scale(Guid section) => Routes.Working(Kind, section, ScaleKey);

    public static string Measurement(Guid section, int number) =>
        Routes.Working(Kind, section, MeasurementKey(number));

    /// <summary>How the scale and each measurement are worked out; nothing without a scale.</summary>
    public static IEnumerable<NamedWorking> Of(SectionPicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        if (picture.SetUp?.Scale().Value is not { } scale)
        {
            yield break;
        }

        yield return new(ScaleKey, scale.Working);
        foreach (var mark in picture.Marks)
        {
            if (PictureMeasuring.Measure(scale, mark.Entry) is { } measured)
            {
                yield return new(MeasurementKey(mark.Number), measured.Working);
            }
        }
    }
}
