using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.TestReports;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing.ExaminationPaper;

/// <summary>An examination laid out like every other test: conditions, extent, flaws, limits with their sources.</summary>
internal static class ExaminationSheet
{
    private const string ViewingSource =
        "ISO 17637:2003, 2: at least 350 lx, within 600 mm, at 30° or more";

    public static TestReportModel Map(PrintedExamination source, Uri address)
    {
        var (signOff, report) = (source.SignOff, source.Report);
        var verdict = report.Rejected.Count == 0 ? Verdict.Pass : Verdict.Fail;
        return new TestReportModel
        {
            Stamp = source.Stamp,
            RecordAddress = address.AbsoluteUri,
            Title = $"{report.Title} report",
            Subject = FormattableString.Invariant(
                $"{signOff.VesselSerial}, {source.Design.Label}, step {signOff.StepSequence}"
            ),
            Verdict = PrintedTests.Mark(verdict),
            Explanation = Explanation(report),
            Notices = [.. Notices(source)],
            Particulars = [.. Particulars(source)],
            Results = [.. Results(source)],
            Tables = [Flaws(report)],
            Sources = [.. Sources(report)],
        };
    }

    private static string Explanation(ExaminationReport report) =>
        report.Rejected.Count == 0
            ? $"No flaw beyond the level and none like a crack was found in what was examined, to {report.Acceptance}."
            : $"Rejected: {string.Join("; ", report.Rejected.Select(f => f.Text))}.";

    private static IEnumerable<string> Notices(PrintedExamination source)
    {
        if (source.Report.Rejected.Count > 0)
        {
            yield return "The examination rejected the weld.";
        }

        foreach (var lack in source.Report.Viewing?.Short ?? [])
        {
            yield return $"The weld was looked at with {lack}.";
        }

        if (
            source.Vessel.Step(source.SignOff.StepSequence)?.OpenedAgainAt is { } again
            && again > source.SignOff.At
        )
        {
            yield return $"The step was opened again on {source.Stamp.Show(again)}: a later examination takes the place of this one.";
        }
    }

    private static IEnumerable<LabelledValue> Particulars(PrintedExamination source)
    {
        var report = source.Report;
        yield return new("Vessel", source.SignOff.VesselSerial);
        yield return new("Step", source.SignOff.Title);
        yield return new("Examined on", source.Stamp.Show(source.SignOff.At));
        yield return new("Method", ExaminationPlan.Word(report.Method));
        yield return new("Method standard", report.MethodStandard);
        yield return new("Acceptance standard and level", report.Acceptance);
        yield return new(
            "Written procedure",
            report.Procedure.Length == 0 ? null : report.Procedure
        );
        if (report.Viewing is { } viewing)
        {
            yield return new("Light on the weld", viewing.Illuminance.ToString());
            yield return new("Distance of the eye", viewing.Distance.ToString());
            yield return new("Angle of the eye to the surface", viewing.Angle.ToString());
        }

        yield return new("Surface, aids and products", report.Conditions);
        yield return new("Remark", source.SignOff.Remark);
    }

    private static IEnumerable<LabelledValue> Results(PrintedExamination source)
    {
        var report = source.Report;
        yield return new("Examined", report.Tested);
        yield return new("Not examined, and why", report.NotTested);
        yield return new(
            "Flaws listed",
            FormattableString.Invariant(
                $"{report.Flaws.Count}, of which {report.Rejected.Count} rejected and {report.Flaws.Count(f => f.IsCrackLike)} like a crack"
            )
        );
        foreach (var finding in source.Findings.OrderBy(f => f.Number))
        {
            yield return new("Finding", $"{finding.Label}, {Finding.StateWord(finding.State)}");
        }
    }

    private static ReportTable Flaws(ExaminationReport report) =>
        new(
            "Flaws: every rejectable one, and every one like a crack whatever its size",
            [
                "No.",
                "Weld",
                "Angle from the mark, °",
                "What",
                "Length or diameter, mm",
                "Like a crack",
                "Judgement",
            ],
            report.Flaws.Count == 0
                ?
                [
                    ["–", "–", "–", "none", "–", "–", "–"],
                ]
                :
                [
                    .. report.Flaws.Select(
                        (f, i) =>
                            (IReadOnlyList<string>)
                                [
                                    (i + 1).ToString(CultureInfo.InvariantCulture),
                                    f.JointCode,
                                    f.Angle.Digits,
                                    f.What,
                                    f.Size.Digits,
                                    f.IsCrackLike ? "yes" : "no",
                                    f.IsRejectable || f.IsCrackLike
                                        ? "rejected"
                                        : "within the level",
                                ]
                    ),
                ]
        )
        {
            IsNumeric = false,
        };

    private static IEnumerable<SourceNote> Sources(ExaminationReport report)
    {
        yield return new("Method", report.MethodStandard);
        yield return new("Limits of flaws", report.Acceptance);
        yield return new(
            "What is listed",
            "NASA-STD-5009C NER 65, 66: every rejectable flaw, and every crack-like one whatever its size"
        );
        if (report.Viewing is not null)
        {
            yield return new("Light, distance and angle", ViewingSource);
        }
    }
}
