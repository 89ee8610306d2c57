using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Engineering.Sections;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.MeasureSection;

/// <summary>Scale and weld face as entered.</summary>
public sealed class ScaleForm
{
    public string? KnownPoints { get; set; }

    public string? KnownLength { get; set; }

    public string? KnownUncertainty { get; set; }

    public string? PixelLength { get; set; }

    public string? PixelUncertainty { get; set; }

    public string? Pointing { get; set; } = "2";

    public string? Face { get; set; }

    public string? Reason { get; set; }

    public static ScaleForm Of(PictureSetUp? setUp) =>
        setUp is null
            ? new()
            : new()
            {
                KnownPoints = setUp is { From: { } from, To: { } to }
                    ? PointText.Write([from, to])
                    : null,
                KnownLength = setUp.KnownLength?.Digits,
                KnownUncertainty = setUp.KnownUncertainty?.Digits,
                PixelLength = setUp.PixelLength?.Digits,
                PixelUncertainty = setUp.PixelUncertainty?.Digits,
                Pointing = setUp.Pointing.Digits,
                Face = PointText.Write([setUp.Face.Advancing, setUp.Face.Retreating]),
            };

    public PictureSetUp Read(Entries entries, List<Refusal> refusals)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(refusals);
        var isKnown =
            string.IsNullOrWhiteSpace(PixelLength) || !string.IsNullOrWhiteSpace(KnownLength);
        var known = isKnown ? Two(KnownPoints, "Known length", nameof(KnownPoints), refusals) : [];
        var face = Two(Face, "Weld face", nameof(Face), refusals);
        var read = new PictureSetUp(
            known.Count == 2 ? known[0] : null,
            known.Count == 2 ? known[1] : null,
            isKnown ? entries.Number(KnownLength, "mm", "Known length", nameof(KnownLength)) : null,
            isKnown
                ? entries.Number(
                    KnownUncertainty,
                    "mm",
                    "Standard uncertainty of the known length",
                    nameof(KnownUncertainty)
                )
                : null,
            entries.OptionalNumber(PixelLength, "µm", "Length of a pixel", nameof(PixelLength)),
            string.IsNullOrWhiteSpace(PixelLength)
                ? null
                : entries.Number(
                    PixelUncertainty,
                    "µm",
                    "Standard uncertainty of the length of a pixel",
                    nameof(PixelUncertainty)
                ),
            entries.Number(Pointing, "px", "Uncertainty of pointing", nameof(Pointing)),
            face.Count == 2 ? new FaceLine(face[0], face[1]) : new FaceLine(default, default)
        );
        refusals.AddRange(entries.Refusals);
        return read;
    }

    private static IReadOnlyList<PicturePoint> Two(
        string? text,
        string what,
        string field,
        List<Refusal> refusals
    )
    {
        var points = PointText.Read(text, what, field, refusals);
        if (points.Count is not (0 or 2))
        {
            refusals.Add(
                new("points", $"{what}: two points are needed; {points.Count} are set.", field)
            );
        }

        return points;
    }
}

/// <summary>A measurement as drawn and described.</summary>
public sealed class MarkForm
{
    public string? Shape { get; set; } = nameof(PictureShape.Line);

    public string? Points { get; set; }

    /// <summary>Name of an imperfection or of a dimension.</summary>
    public string? Subject { get; set; }

    public string? DesignLimit { get; set; }

    public string? DesignDocument { get; set; }

    public string? Note { get; set; }

    /// <summary>Number of the measurement that this one replaces; empty for a new one.</summary>
    public string? Replaces { get; set; }

    public string? Reason { get; set; }

    public MarkEntry Read(Entries entries, List<Refusal> refusals)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(refusals);
        var isDimension = Enum.GetNames<SectionDimension>().Contains(Subject);
        var entry = new MarkEntry(
            entries.Choice<PictureShape>(Shape, "Shape", nameof(Shape)),
            PointText.Read(Points, "Points", nameof(Points), refusals),
            isDimension
                ? Imperfection.None
                : entries.Choice<Imperfection>(Subject, "What it is", nameof(Subject)),
            isDimension ? Enum.Parse<SectionDimension>(Subject!) : null,
            entries.OptionalNumber(DesignLimit, "mm", "Limit of the design", nameof(DesignLimit)),
            string.IsNullOrWhiteSpace(DesignDocument) ? null : DesignDocument.Trim(),
            Note?.Trim() ?? ""
        );
        refusals.AddRange(entries.Refusals);
        return entry;
    }
}

/// <summary>A measurement that is struck out.</summary>
public sealed class StrikeForm
{
    public string? Number { get; set; }

    public string? Reason { get; set; }
}

/// <summary>The conclusion.</summary>
public sealed class ConcludeForm
{
    public string? Seen { get; set; }
}
