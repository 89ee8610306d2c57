using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Demo;

/// <summary>The inspector's certificates, and the instruments at hand.</summary>
internal sealed record DemoExaminer(
    IReadOnlyList<Certificate> Certificates,
    IReadOnlyList<Instrument> Instruments
)
{
    private static readonly (ExaminationMethod Method, string Number)[] Held =
    [
        (ExaminationMethod.Visual, "VT2-5521"),
        (ExaminationMethod.Macroscopic, "MA-0113"),
        (ExaminationMethod.Leak, "LT2-0876"),
        (ExaminationMethod.Pressure, "PRT-0412"),
        (ExaminationMethod.Mechanical, "MT2-0220"),
    ];

    public Instrument? InstrumentFor(InstrumentKind? kind) =>
        Instruments.FirstOrDefault(i => i.Measures == kind);

    public static async Task<DemoExaminer> SetUpAsync(
        WeldTraceDbContext db,
        IReadOnlyList<Instrument> instruments,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        var inspector = db.People.Single(p => p.Id == cast.Inspector.PersonId);
        var at = clock.AfterMinutes(20);
        var examiner = new DemoExaminer(
            [.. Held.Select(h => Certificate(inspector, h.Method, h.Number, cast, at))],
            instruments
        );
        foreach (var certificate in examiner.Certificates)
        {
            db.AddRange(
                certificate,
                Signature.Of(
                    certificate,
                    cast.QualityManager,
                    Domain.Certification.Certificate.IssueMeaning,
                    at
                )
            );
        }

        await db.SaveForDemoAsync(cancellation);
        return examiner;
    }

    private static Certificate Certificate(
        Person inspector,
        ExaminationMethod method,
        string number,
        DemoCast cast,
        DateTimeOffset at
    )
    {
        var today = DateOnly.FromDateTime(at.UtcDateTime);
        return Domain
            .Certification.Certificate.Issue(
                inspector,
                new CertificateText(
                    number,
                    "Northern examiners' board",
                    today.AddMonths(-5),
                    today.AddMonths(55),
                    null,
                    null,
                    new ExaminerScope(method, 2, "welds", today.AddMonths(-5))
                ),
                null,
                [],
                today,
                cast.QualityManager,
                at
            )
            .Must();
    }
}
