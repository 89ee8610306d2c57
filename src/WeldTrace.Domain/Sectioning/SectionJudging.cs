using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Domain.Sectioning;

// How measurements are judged.
public sealed partial class SectionExamination
{
    private const int LongestSentence = 900;

    private static (Verdict Verdict, string Sentence) Conclusion(IReadOnlyList<PictureMark> marks)
    {
        var judged = marks.Where(m => m.Result.Verdict is not null).ToList();
        if (judged.Count == 0)
        {
            return (Engineering.Conformity.Verdict.Pass, "The section shows no imperfection.");
        }

        var sentence = string.Join(
            " ",
            judged
                .OrderBy(m => m.Result.Verdict == Engineering.Conformity.Verdict.Pass)
                .ThenBy(m => m.Number)
                .Select(m =>
                    FormattableString.Invariant($"{m.Number}, {m.Entry.Name}: {m.Result.Sentence}")
                )
        );
        return (
            Verdicts.Worst(judged.Select(m => m.Result.Verdict!.Value)),
            sentence.Length <= LongestSentence ? sentence : sentence[..(LongestSentence - 1)] + "…"
        );
    }

    private MarkResult? Judged(Checks checks, MarkEntry entry, LimitTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        PictureChecks.Mark(checks, Photograph, entry);
        checks.That(
            Picture?.SetUp is not null,
            "scale",
            "The picture has no scale yet; set the scale and the weld face before you measure."
        );
        if (!checks.AllHold)
        {
            return null;
        }

        var limit = LimitFor(checks, entry, table);
        var setUp = Picture!.SetUp!;
        return checks.AllHold
            ? PictureMeasuring.Result(setUp.Scale().Value, setUp.Face, entry, limit)
            : null;
    }

    private AppliedLimit? LimitFor(Checks checks, MarkEntry entry, LimitTable table)
    {
        var standards = Standards!;
        ArgumentOutOfRangeException.ThrowIfNotEqual(table.Id, standards.Limits.Id);
        if (entry.Dimension is not null)
        {
            return null;
        }

        var limit = ImperfectionJudgement.LimitFor(
            table,
            entry.Name,
            standards.Thickness,
            entry.DesignLimit,
            entry.DesignDocument
        );
        var isDesign = limit is not null && ReferenceEquals(limit.AtMost, entry.DesignLimit);
        checks
            .That(
                limit is not null,
                "no-limit",
                $"{table.Label} has no limit for {entry.Name}; give that of the design specification.",
                nameof(MarkEntry.DesignLimit),
                table.Text.Source.ToString()
            )
            .That(
                !isDesign || entry.DesignLimit!.InUnit() >= 0,
                "limit",
                "Give the limit of the design, zero or more.",
                nameof(MarkEntry.DesignLimit)
            )
            .That(
                entry.Shape != PictureShape.Point || limit is null || limit.AtMost.InUnit() == 0,
                "shape",
                $"A point has no size, and {entry.Name} is permitted up to {limit?.AtMost}; draw a line or an area.",
                nameof(MarkEntry.Shape)
            );
        if (isDesign)
        {
            checks.Text(
                entry.DesignDocument,
                LongestText,
                "Name the design specification with its clause",
                nameof(MarkEntry.DesignDocument)
            );
        }

        return limit;
    }
}
