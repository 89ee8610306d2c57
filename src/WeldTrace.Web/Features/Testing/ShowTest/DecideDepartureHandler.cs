using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
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

/// <summary>What was typed to have a hold repeated.</summary>
public sealed class RepeatHoldForm
{
    public string? Reason { get; set; }

    public string? Password { get; set; }
}

/// <summary>Decides and signs what follows from a pressure test having left its plan, or that a hold is repeated.</summary>
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
        if (form.Choice is not (GoOn or End))
        {
            return Outcome.Refused(
                "choice",
                "Choose whether the test goes on or ends.",
                nameof(form.Choice)
            );
        }

        return await ActAsync(
            id,
            form.Password,
            PlanDeparture.DecisionMeaning,
            actor,
            (test, design, at) =>
                test.Decide(form.Choice == GoOn, form.Reason ?? "", design, actor, at),
            cancellation
        );
    }

    public Task<Outcome> RepeatAsync(
        Guid id,
        RepeatHoldForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return ActAsync(
            id,
            form.Password,
            PlanDeparture.RepeatMeaning,
            actor,
            (test, design, at) => test.RepeatHold(form.Reason ?? "", design, actor, at),
            cancellation
        );
    }

    private async Task<Outcome> ActAsync(
        Guid id,
        string? password,
        string meaning,
        Actor actor,
        Func<PressureTest, VesselDesign, DateTimeOffset, Outcome> act,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var proved = await passwords.ForSignatureAsync(actor, password, cancellation);
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
        var outcome = act(test, design, at);
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        db.Add(Signature.Of(test, actor, meaning, at));
        return await db.SaveAsync(cancellation);
    }
}
