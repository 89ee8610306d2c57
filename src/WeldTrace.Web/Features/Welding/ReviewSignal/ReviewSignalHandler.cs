using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Welding.ReviewSignal;

public sealed class ReviewSignalForm
{
    public Guid Id { get; set; }

    public string? Conclusion { get; set; }

    public string? Text { get; set; }

    public Guid? FindingId { get; set; }
}

/// <summary>Records what a review of a signal came to; the charts are drawn anew for it, from what is kept.</summary>
public sealed class ReviewSignalHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    ReviewSignalReader reader,
    TimeProvider clock
)
{
    private const SignalConclusion Unsaid = (SignalConclusion)(-1);

    public async Task<Outcome> HandleAsync(
        Guid run,
        WeldParameter parameter,
        RunFigureFilter filter,
        ReviewSignalForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        if (await reader.FindAsync(run, parameter, filter, cancellation) is not { } view)
        {
            return Outcome.Refused("run", "There is no such run among those chosen.");
        }

        if (view.Reviews.Any(r => r.Id == form.Id))
        {
            return Outcome.Accepted;
        }

        var finding = view.Findings.SingleOrDefault(f => f.Id == form.FindingId);
        if (form.FindingId is not null && finding is null)
        {
            return Outcome.Refused(
                "finding",
                $"There is no such finding of {view.Run.VesselSerial}.",
                nameof(form.FindingId)
            );
        }

        var conclusion = Enum.TryParse<SignalConclusion>(form.Conclusion, out var chosen)
            ? chosen
            : Unsaid;
        form.Id = FormIdentity.OrNew(form.Id, clock);
        var review = SignalReview.Record(
            form.Id,
            view.Run,
            view.Seen,
            conclusion,
            form.Text ?? "",
            finding,
            actor,
            clock.GetUtcNow()
        );
        if (!review.IsAccepted)
        {
            return review.WithoutValue();
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.Add(review.Value);
        return await db.SaveAsync(cancellation);
    }
}
