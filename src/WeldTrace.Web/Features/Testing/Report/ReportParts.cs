using WeldTrace.Documents;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.TestReports;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing.Report;

/// <summary>What the reports of all tests have in common.</summary>
internal static class ReportParts
{
    /// <summary>The model with everything that doesn't depend on the kind of test.</summary>
    /// <param name="source">Test with what stands around it.</param>
    /// <param name="name">Name of the test, for instance <c>Leak test</c>.</param>
    /// <param name="path">Path of the test's page.</param>
    /// <param name="method">Method that whoever tests is certified for.</param>
    public static TestReportModel Common(
        ReportSource source,
        string name,
        string path,
        ExaminationMethod method
    )
    {
        var test = source.Test;
        var isCertificate = test is { Verdict: Verdict.Pass, SignedAt: not null, Withdrawal: null };
        return new TestReportModel
        {
            Stamp = source.Stamp,
            RecordAddress = new Uri(source.SiteAddress, path).AbsoluteUri,
            Title = isCertificate ? $"{name} certificate" : $"{name} report",
            Subject = FormattableString.Invariant(
                $"{test.VesselSerial}, {source.Design.Label}, step {test.StepSequence}"
            ),
            Verdict = PrintedTests.Mark(test.Verdict),
            IsUnderPressure = true,
            Explanation =
                test.VerdictSentence.Length > 0 ? test.VerdictSentence : "Readings are missing.",
            Notices = [.. PrintedTests.Notices(test)],
            Tables =
            [
                PrintedTests.Instruments(source.Test.Instruments, source.Instruments),
                People(source, method),
            ],
            Signatures =
            [
                .. source.Signatures.Select(s => new SignatureEntry(
                    s.PrintedName,
                    s.Meaning,
                    s.At,
                    FormattableString.Invariant($"{test.Label}, version {s.SignedVersion}"),
                    s.SignedSha256
                )),
            ],
        };
    }

    /// <summary>Who read what the test stores, before anything was pressurised.</summary>
    public static IEnumerable<LabelledValue> Hazard(HazardAcknowledgement? read)
    {
        if (read is null)
        {
            yield break;
        }

        yield return new(
            "Stored energy",
            $"{SensibleDigits.Show(read.Energy.Joules / 1000, 3)} kJ at {SensibleDigits.Show(read.Highest.Bar, 4)} bar with {(read.IsGas ? "gas" : "liquid")}, as {SensibleDigits.Show(read.Tnt.Kilograms, 2)} kg of TNT"
        );
        if (read.StandOff is { } distance)
        {
            yield return new("Stand-off, at least", $"{SensibleDigits.Show(distance.Metres, 2)} m");
        }

        yield return new("Read and acknowledged by", read.PrintedName);
    }

    /// <summary>Where limits and factors of the pressure plan stand.</summary>
    public static IReadOnlyList<SourceNote> Sources(ReportSource source) =>
        [
            new(
                "Test pressures, rates, holds and limits",
                $"{source.Design.Label}; {source.Design.Content.Pressures.FactorSource}"
            ),
            .. (source.Design.Content.Examinations ?? [])
                .Where(e =>
                    e.Method
                        is Domain.VesselDesigns.PlannedExamination.Leak
                            or Domain.VesselDesigns.PlannedExamination.Pressure
                )
                .Select(e => new SourceNote(
                    $"{Domain.VesselDesigns.ExaminationPlan.Word(e.Method)}, {e.JointCode ?? "whole vessel"}",
                    $"method {e.MethodStandard}; acceptance {e.AcceptanceStandard}, {e.Level}"
                )),
        ];

    private static ReportTable People(ReportSource source, ExaminationMethod method) =>
        PrintedTests.People([
            [
                source.Test.InspectorName,
                "tested and entered the readings",
                string.Join(
                    "; ",
                    source
                        .Certificates.Where(c => c.Text.Examiner?.Method == method)
                        .Select(c =>
                            FormattableString.Invariant($"{c.Number}, until {c.EndsOn:yyyy-MM-dd}")
                        )
                        .DefaultIfEmpty("–")
                ),
            ],
            .. source
                .Signatures.Where(s => s.PrintedName != source.Test.InspectorName)
                .Select(s => (IReadOnlyList<string>)[s.PrintedName, s.Meaning, "–"]),
        ]);
}
