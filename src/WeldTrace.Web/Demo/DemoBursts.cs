using WeldTrace.Domain.Lots;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Demo;

/// <summary>A lot whose three samples were burst, so that its page shows what bursts say of the others.</summary>
internal sealed class DemoBursts(
    WeldTraceDbContext db,
    DemoWorkshop shop,
    DemoCast cast,
    DemoClock clock,
    DemoLots lots
)
{
    private const int First = 20;
    private const int InALot = 5;
    private const int Bursts = 3;
    private const int AfterProof = 100;
    private const int VisualExamination = 60;

    public async Task AddAsync(CancellationToken cancellation)
    {
        var own = shop with { Design = await lots.ReleaseAsync(Draw(), cancellation) };
        List<DemoVessel> vessels = [];
        for (var number = First; number < First + InALot; number++)
        {
            vessels.Add(
                await DemoVessel.PlanAsync(
                    db,
                    own,
                    cast,
                    clock,
                    number,
                    shop.Material.Tube,
                    cancellation
                )
            );
        }

        var lot = await lots.FormAsync("PL-26-08", own.Design, vessels, cancellation);
        await lots.ChooseAsync(lot, own.Design, vessels, cancellation);
        foreach (var vessel in vessels.Take(Bursts))
        {
            await vessel.GoToAsync(AfterProof, cancellation);
        }

        await vessels[^1].GoToAsync(VisualExamination, cancellation);
    }

    private VesselDesign Draw()
    {
        var content = DemoDesigns.Reservoir;
        return VesselDesign
            .Draw(
                "NR-10B",
                "Nitrogen reservoir 10 l, burst by lot",
                content with
                {
                    Samples = new SamplePlan(
                        [new(SampleKind.Burst, Bursts, SampleChoice.First)],
                        "Design specification DS-10 of this workshop, section 7; not checked against a code",
                        0.90m,
                        0.95m,
                        2.0m
                    ),
                    Route = [.. content.Route.Where(s => s.Kind != StepKind.Section)],
                },
                cast.Engineer,
                clock.AfterMinutes(60)
            )
            .Must();
    }
}
