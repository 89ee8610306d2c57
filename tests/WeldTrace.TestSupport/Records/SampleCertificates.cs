using WeldTrace.Domain.Certification;
using WeldTrace.Domain.People;

namespace WeldTrace.TestSupport.Records;

public static class SampleCertificates
{
    /// <summary>An examiner's certificate for one method, tested a month before <see cref="SampleTime.Start"/>, good for five years.</summary>
    public static Certificate Examiner(Person examiner, ExaminationMethod method)
    {
        var start = DateOnly.FromDateTime(SampleTime.Start.Date);
        return Accept.Value(
            Certificate.Issue(
                examiner,
                new CertificateText(
                    $"EX-{examiner.PrintedName}-{method}",
                    "Certification body",
                    start.AddMonths(-1),
                    start.AddYears(5),
                    null,
                    null,
                    new ExaminerScope(method, 2, "welds", start.AddMonths(-1))
                ),
                null,
                [],
                start,
                SamplePeople.QualityManager,
                SampleTime.Start
            )
        );
    }

    /// <summary>Certificates for every method that a qualification asks for.</summary>
    public static IReadOnlyList<Certificate> AllMethods(Person examiner) =>
        [.. Enum.GetValues<ExaminationMethod>().Select(m => Examiner(examiner, m))];
}
