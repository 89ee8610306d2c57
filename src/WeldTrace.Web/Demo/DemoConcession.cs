using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Demo;

/// <summary>The engineer has asked that the material of one vessel be let through; the quality manager has not signed yet.</summary>
internal static class DemoConcession
{
    public static async Task AskAsync(
        WeldTraceDbContext db,
        DemoWorkshop shop,
        string serial,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        const int Step = 20;
        const string Rule = "F7";
        var at = clock.AfterMinutes(5);
        var facts = await db.FindWeldGateFactsAsync(
            serial,
            Step,
            new WeldChoice(shop.Tool.Mark, shop.Machine.Name, cast.Operator, at),
            cancellation
        );
        var concession = Concession
            .Ask(
                facts!,
                Rule,
                "The mill has promised its 3.1 certificate for this cast; hardness and composition were checked here on the tube.",
                cast.Engineer,
                at
            )
            .Must();
        db.AddRange(concession, Signature.Of(concession, cast.Engineer, Concession.AskMeaning, at));
        await db.SaveForDemoAsync(cancellation);
    }
}
