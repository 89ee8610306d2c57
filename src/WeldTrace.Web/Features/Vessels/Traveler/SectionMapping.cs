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
        var (cut, found) = (section.Cut, section.Measurement);
        var where = FormattableString.Invariant(
            $"{cut.JointCode} at {cut.Angle.Degrees:0.#}° from the start"
        );
        var verdict = PrintedMarks.Of(
            DomainMarks.Of(section.Verdict),
            TestRecord.VerdictWord(section.Verdict)
        );
        return new SectionSheet
        {
            Reference = FormattableString.Invariant($"step {section.StepSequence}"),
            Title = where,
            Inspector = section.InspectorName,
            ExaminedAt = section.TestedAt,
            Particulars =
            [
                new LabelledValue("Etchant", cut.Etchant),
                new LabelledValue("Magnification or scale", cut.Magnification),
                new LabelledValue("Side", found.Side?.ToString().ToLowerInvariant()),
                new LabelledValue("Distance from face", found.DistanceFromFace?.ToString()),
                new LabelledValue("Source of the limit", found.LimitSource),
                new LabelledValue("Remark", section.Remark),
            ],
            Measurements =
            [
                new MeasurementLine(SectionExamination.ImperfectionWord(found.Imperfection), "mm")
                {
                    Measured = found.Size is null
                        ? null
                        : $"{found.Size.Digits} ± {found.SizeUncertainty?.Digits}",
                    Limit = found.Limit?.Digits,
                    Verdict = verdict,
                },
            ],
            Photographs = source.Photographs.TryGetValue(section.Photograph.Sha256, out var bytes)
                ?
                [
                    new Documents.Photograph(
                        bytes,
                        $"Section of {where}; {cut.Etchant}.",
                        $"Macro photograph of the section of {where}."
                    ),
                ]
                : [],
            Verdict = verdict,
            Explanation = section.VerdictSentence,
            Superseded = Withdrawals.Of(section),
        };
    }
}
