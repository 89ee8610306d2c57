using WeldTrace.Domain.ProductionTesting;

namespace WeldTrace.Persistence.Loading;

public static class ProductionLoading
{
    /// <summary>What happened on a machine, welding to a procedure revision, since its last production test.</summary>
    public static async Task<ProductionSince> LoadProductionSinceAsync(
        this WeldTraceDbContext db,
        Guid machine,
        Guid procedure,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        RoundTrip trip = new(db);
        ProductionQuestions questions = new(
            trip,
            db,
            db.ProductionTests.Where(t =>
                t.MachineId == machine && t.ProcedureRevisionId == procedure
            )
        );
        await trip.RunAsync(cancellation);
        return questions.Answered(machine, procedure);
    }
}
