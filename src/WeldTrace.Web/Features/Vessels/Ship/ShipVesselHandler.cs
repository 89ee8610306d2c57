using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Vessels.Ship;

public sealed class ShipVesselForm
{
    public string? Consignee { get; set; }

    public string? Papers { get; set; }

    public string? Password { get; set; }
}

public sealed class ShipVesselHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    public const string Meaning = "I release this vessel from the site; its records are complete.";

    public async Task<Vessel?> FindAsync(string serial, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .Vessels.AsNoTracking()
            .SingleOrDefaultAsync(v => v.Serial == serial, cancellation);
    }

    public async Task<Outcome> HandleAsync(
        string serial,
        ShipVesselForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var vessel = await db.Vessels.SingleOrDefaultAsync(v => v.Serial == serial, cancellation);
        if (vessel is null)
        {
            return Outcome.Refused("vessel", $"There is no vessel {serial}.");
        }

        var at = clock.GetUtcNow();
        var outcome = vessel.Ship(new Shipment(form.Consignee ?? "", form.Papers ?? ""), actor, at);
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        db.Add(Signature.Of(vessel, actor, Meaning, at));
        return await db.SaveAsync(cancellation);
    }
}
