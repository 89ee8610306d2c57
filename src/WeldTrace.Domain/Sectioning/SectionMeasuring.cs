using WeldTrace.Domain.Limits;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Sectioning;

/// <summary>The acts between taking in the photograph and signing.</summary>
public sealed partial class SectionExamination
{
    /// <summary>Most measurements on one picture.</summary>
    public const int MostMarks = 100;

    /// <summary>Sets the scale and the weld face. A second time it corrects them: every measurement is computed again.</summary>
    /// <param name="setUp">Scale and face.</param>
    /// <param name="reason">Why it is corrected; not asked for the first time.</param>
    /// <param name="actor">Inspector.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome SetScale(PictureSetUp setUp, string? reason, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(setUp);
        var checks = CheckMeasuring(actor);
        PictureChecks.SetUp(checks, Photograph, setUp);
        if (Picture?.SetUp is not null)
        {
            CheckReason(checks, reason);
        }

        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        var (picture, scale) = (Picture!, setUp.Scale().Value);
        Change(
            picture with
            {
                SetUp = setUp,
                Marks =
                [
                    .. picture.Marks.Select(m =>
                        m with
                        {
                            Result = PictureMeasuring.Result(
                                scale,
                                setUp.Face,
                                m.Entry,
                                m.Result.Limit
                            ),
                        }
                    ),
                ],
                Corrections = picture.SetUp is { } old
                    ?
                    [
                        .. picture.Corrections,
                        new(null, old, reason!.Trim(), actor.PersonId, actor.PrintedName, at),
                    ]
                    : picture.Corrections,
            },
            actor,
            at,
            picture.SetUp is null ? "scale set" : "scale corrected",
            reason
        );
        return Outcome.Accepted;
    }

    /// <summary>Adds a measurement.</summary>
    /// <param name="entry">As drawn.</param>
    /// <param name="table">Table of limits that the section is judged by.</param>
    /// <param name="actor">Inspector.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Measure(MarkEntry entry, LimitTable table, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var checks = CheckMeasuring(actor)
            .That(
                (Picture?.Marks.Count ?? 0) < MostMarks,
                "many",
                $"A picture takes {MostMarks} measurements; use another picture for more."
            );
        if (Judged(checks, entry, table) is not { } result)
        {
            return checks.ToOutcome();
        }

        var picture = Picture!;
        var mark = new PictureMark(picture.NextNumber, entry, result);
        Change(
            picture with
            {
                Marks = [.. picture.Marks, mark],
            },
            actor,
            at,
            FormattableString.Invariant($"measurement {mark.Number} added"),
            null
        );
        return Outcome.Accepted;
    }

    /// <summary>Replaces a measurement; what it was stays readable.</summary>
    /// <param name="number">Its number, which it keeps.</param>
    /// <param name="entry">As it is drawn now; null to strike it out.</param>
    /// <param name="table">Table of limits that the section is judged by.</param>
    /// <param name="reason">Why; 1 to 400 characters.</param>
    /// <param name="actor">Inspector.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Correct(
        int number,
        MarkEntry? entry,
        LimitTable table,
        string? reason,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = CheckMeasuring(actor)
            .That(
                Picture?.Mark(number) is not null,
                "mark",
                FormattableString.Invariant(
                    $"There is no measurement {number}; load the page again and choose one of the list."
                )
            );
        CheckReason(checks, reason);
        var result = entry is null ? null : Judged(checks, entry, table);
        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        var (picture, old) = (Picture!, Picture!.Mark(number)!);
        Change(
            picture with
            {
                Marks =
                [
                    .. picture
                        .Marks.Select(m =>
                            m.Number != number ? m
                            : entry is null ? null
                            : new PictureMark(number, entry, result!)
                        )
                        .OfType<PictureMark>(),
                ],
                Corrections =
                [
                    .. picture.Corrections,
                    new(old, null, reason!.Trim(), actor.PersonId, actor.PrintedName, at),
                ],
            },
            actor,
            at,
            FormattableString.Invariant(
                $"measurement {number} {(entry is null ? "struck out" : "corrected")}"
            ),
            reason
        );
        return Outcome.Accepted;
    }

    /// <summary>
    /// Concludes that all that the section shows is measured; the verdict is the worst of the imperfections, and a pass when there is
    /// none. A later change takes the conclusion back.
    /// </summary>
    /// <param name="seen">What the examiner says of the whole section; 1 to 400 characters.</param>
    /// <param name="actor">Inspector.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Conclude(string? seen, Actor actor, DateTimeOffset at)
    {
        var checks = CheckMeasuring(actor)
            .That(
                Picture?.SetUp is not null,
                "scale",
                "The picture has no scale yet; set it before you conclude."
            )
            .Text(
                seen,
                LongestText,
                "Say what the whole section shows",
                nameof(SectionPicture.Seen)
            );
        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        Note(actor, at, "section concluded");
        Picture = Picture! with { Seen = seen!.Trim() };
        (Verdict, VerdictSentence) = Conclusion(Picture.Marks);
        return Outcome.Accepted;
    }

    // What was concluded holds only for what was measured then.
    private void Change(
        SectionPicture picture,
        Actor actor,
        DateTimeOffset at,
        string act,
        string? reason
    )
    {
        Note(actor, at, act, reason?.Trim());
        Picture = picture with { Seen = null };
        (Verdict, VerdictSentence) = (null, "");
    }

    private Checks CheckMeasuring(Actor actor) =>
        new Checks()
            .Role(actor, Role.Inspector)
            .That(!IsSealed, "state", "This section is signed or withdrawn and stays as it is.")
            .That(
                Picture is not null,
                "state",
                "This section was recorded with a typed size; it has no measurements on its picture."
            );

    private static void CheckReason(Checks checks, string? reason) =>
        checks.Text(reason, LongestText, "Say why it is corrected", "Reason");
}
