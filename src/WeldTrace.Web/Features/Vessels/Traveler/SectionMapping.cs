using WeldTrace.Documents;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

internal static class SectionMapping
{
    public static SectionSheet Map(TravelerSource source, SectionExamination section)
    {
        var cut = section.Cut;
        var where = FormattableString.Invariant(
            $"{cut.JointCode} at {cut.Angle.Degrees:0.#}° from the start"
        );
        return new SectionSheet
        {
            Reference = FormattableString.Invariant($"step {section.StepSequence}"),
            Title = where,
            Inspector = section.InspectorName,
            ExaminedAt = section.TestedAt,
            Particulars =
            [
                .. SectionText.Of(section).Select(l => new LabelledValue(l.Label, l.Value)),
                new LabelledValue("Seen", section.Picture?.Seen),
                new LabelledValue("Remark", section.Remark),
            ],
            Measurements = PrintedSections.Measurements(section),
            Photographs = source.Photographs.TryGetValue(section.Photograph.Sha256, out var bytes)
                ? [PrintedSections.Picture(section, bytes)]
                : [],
            Replaced = PrintedSections.Replaced(section),
            Verdict = PrintedMarks.Of(
                DomainMarks.Of(section.Verdict),
                TestRecord.VerdictWord(section.Verdict)
            ),
            Explanation = section.VerdictSentence,
            Superseded = Withdrawals.Of(section),
        };
    }
}
