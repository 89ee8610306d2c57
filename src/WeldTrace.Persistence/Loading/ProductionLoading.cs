using WeldTrace.Domain.ProductionTesting;

namespace WeldTrace.Persistence.Loading;

public static class ProductionLoading
{
    /// <summary>What happened on a machine, welding to a procedure revision, since its last production test.</summary>
    public static async Task<ProductionSince> LoadProductionSinceAsync(
        this WeldTraceDbContext db,
        Guid machine,
        Guid procedure,
        DateTimeOffset now,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        RoundTrip trip = new(db);
        ProductionQuestions questions = new(
            trip,
            db,
            db.Machines.Where(m => m.Id == machine).Select(m => m.Id),
            db.ProcedureRevisions.Where(p => p.Id == procedure).Select(p => p.Id),
            now
        );
        await trip.RunAsync(cancellation);
        return questions.Answered(machine, procedure);
    }
}
