using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Demo;

/// <summary>The operator's qualification, which covers the demonstration's welds and is to be confirmed within some weeks.</summary>
internal static class DemoWelders
{
    private const int MonthsSinceTest = 4;

    public static async Task SetUpAsync(
        WeldTraceDbContext db,
        Machine machine,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        var at = clock.AfterMinutes(15);
        var today = DateOnly.FromDateTime(at.UtcDateTime);
        var certificate = Certificate
            .Issue(
                db.People.Single(p => p.Id == cast.Operator.PersonId),
                new CertificateText(
                    "OPQ-0231",
                    DemoData.SiteName,
                    today.AddMonths(-MonthsSinceTest),
                    today.AddMonths(-MonthsSinceTest).AddYears(3),
                    null,
                    Scope(machine),
                    null
                ),
                null,
                [],
                today,
                cast.QualityManager,
                at
            )
            .Must();
        db.AddRange(
            certificate,
            Signature.Of(certificate, cast.QualityManager, Certificate.IssueMeaning, at)
        );
        await db.SaveForDemoAsync(cancellation);
    }

    private static OperatorScope Scope(Machine machine) =>
        new(
            DemoDesigns.Procedure,
            "6061-T6, lap, 6 mm, tool TD-15, flat",
            ["lap"],
            machine.ControlMode,
            ToolType.FixedProbe,
            Revalidation.NewTest,
            6,
            FunctionalKnowledgePassed: true,
            TestWeldPassed: true
        );
}
