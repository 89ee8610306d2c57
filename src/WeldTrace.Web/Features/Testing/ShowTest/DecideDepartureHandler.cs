using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.ShowTest;

/// <summary>What was typed for a decision about a step out of the plan.</summary>
public sealed class DecideDepartureForm
{
    /// <summary>"on" to go on, "end" to end the test.</summary>
    public string? Choice { get; set; }

    public string? Reason { get; set; }

    public string? Password { get; set; }
}

/// <summary>Decides and signs what follows from a pressure test having left its plan.</summary>
public sealed class DecideDepartureHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    /// <summary>Choice with which the test goes on.</summary>
    public const string GoOn = "on";

    /// <summary>Choice with which the test ends and fails.</summary>
    public const string End = "end";

    public async Task<Outcome> HandleAsync(
        Guid id,
        DecideDepartureForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(actor);
        if (form.Choice is not (GoOn or End))
        {
            return Outcome.Refused(
                "choice",
                "Choose whether the test goes on or ends.",
                nameof(form.Choice)
            );
        }

        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var test = await db.PressureTests.SingleOrDefaultAsync(t => t.Id == id, cancellation);
        if (test is null)
        {
            return Outcome.Refused(
                "missing",
                "There is no such test. Look for it in the list of tests."
            );
        }

        var at = clock.GetUtcNow();
        var vessel = await db.Vessels.SingleAsync(v => v.Id == test.VesselId, cancellation);
        var design = await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation);
        var outcome = test.Decide(form.Choice == GoOn, form.Reason ?? "", design, actor, at);
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        db.Add(Signature.Of(test, actor, PlanDeparture.DecisionMeaning, at));
        return await db.SaveAsync(cancellation);
    }
}
