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

    /// <summary>An operator's certificate for lap joints under force control, tested a month before <see cref="SampleTime.Start"/>, good for two years, confirmed every six months.</summary>
    public static Certificate Welder(
        Person welder,
        string? number = null,
        OperatorScope? scope = null
    )
    {
        ArgumentNullException.ThrowIfNull(welder);
        var start = SampleTime.Day;
        return Accept.Value(
            Certificate.Issue(
                welder,
                new CertificateText(
                    number ?? $"OP-{welder.PrintedName}",
                    "Test works",
                    start.AddMonths(-1),
                    start.AddYears(2),
                    null,
                    scope ?? Scope,
                    null
                ),
                null,
                [],
                start,
                SamplePeople.QualityManager,
                SampleTime.Start
            )
        );
    }

    /// <summary>Lap joints, force control, fixed probe.</summary>
    public static OperatorScope Scope { get; } =
        new(
            "WP-07 rev A",
            "6061-T6, 3 mm",
            ["lap"],
            "force",
            ToolType.FixedProbe,
            Revalidation.NewTest,
            6,
            FunctionalKnowledgePassed: true,
            TestWeldPassed: true
        );

    /// <summary>Certificates for every method that a qualification asks for.</summary>
    public static IReadOnlyList<Certificate> AllMethods(Person examiner) =>
        [.. Enum.GetValues<ExaminationMethod>().Select(m => Examiner(examiner, m))];
}
