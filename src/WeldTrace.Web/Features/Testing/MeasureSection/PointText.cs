using System.Globalization;
using System.Text.RegularExpressions;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Sections;

namespace WeldTrace.Web.Features.Testing.MeasureSection;

/// <summary>Points of a picture as text: <c>120.5,64 300,64</c>. What a script sets by pointing can be typed as well.</summary>
internal static partial class PointText
{
    private const int MostPoints = 500;

    public static string Write(IEnumerable<PicturePoint> points) =>
        string.Join(' ', points.Select(p => FormattableString.Invariant($"{p.X:0.#},{p.Y:0.#}")));

    public static IReadOnlyList<PicturePoint> Read(
        string? text,
        string what,
        string field,
        ICollection<Refusal> refusals
    )
    {
        var parts = (text ?? "").Split(
            (char[])[' ', ';', '\t', '\r', '\n'],
            StringSplitOptions.RemoveEmptyEntries
        );
        if (parts.Length == 0)
        {
            refusals.Add(
                new("points", $"{what}: set the points on the picture, or type them.", field)
            );
            return [];
        }

        var wrong = parts.FirstOrDefault(p => !Point().IsMatch(p));
        if (wrong is not null || parts.Length > MostPoints)
        {
            refusals.Add(
                new(
                    "points",
                    wrong is null
                        ? $"{what}: {parts.Length} points are too many."
                        : $"{what}: '{(wrong.Length > 30 ? wrong[..29] + "…" : wrong)}' is no point; write each as x,y in pixels with a space between points, for instance 120,64 300,64.",
                    field
                )
            );
            return [];
        }

        return
        [
            .. parts
                .Select(p => p.Split(','))
                .Select(p => new PicturePoint(Number(p[0]), Number(p[1]))),
        ];
    }

    private static double Number(string text) =>
        Math.Round(double.Parse(text, CultureInfo.InvariantCulture), 1);

    [GeneratedRegex(@"^-?[0-9]{1,6}(\.[0-9]{1,6})?,-?[0-9]{1,6}(\.[0-9]{1,6})?$")]
    private static partial Regex Point();
}
