using System.Globalization;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.SiteSettings;

public sealed class SiteSettingsForm : IShownVersion
{
    /// <inheritdoc/>
    public int? Version { get; set; }

    public string? Name { get; set; }

    public string? TimeZoneId { get; set; }

    public UnitSystem Units { get; set; }

    /// <summary>Weakest inspection document; empty for none.</summary>
    public string? RequiredDocument { get; set; }

    /// <summary>Whole years; empty for what the published rules ask.</summary>
    public string? RetentionYears { get; set; }
}

public sealed class SiteSettingsHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    TimeProvider clock
)
{
    public async Task<Outcome> HandleAsync(
        SiteSettingsForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        if (RoleRules.Require(actor, Role.Administrator) is { } refusal)
        {
            return Outcome.From([refusal]);
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var site = await db.Sites.SingleAsync(cancellation);
        var outcome = site.Change(
            form.Name ?? "",
            form.TimeZoneId ?? "",
            form.Units,
            actor,
            clock.GetUtcNow()
        );
        if (outcome.IsAccepted)
        {
            outcome = site.KeepRecordsFor(Years(form.RetentionYears), actor, clock.GetUtcNow());
        }

        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        site.RequireDocument(
            InspectionDocumentWords.Read(form.RequiredDocument),
            actor,
            clock.GetUtcNow()
        );
        var saved = await db.SaveEditAsync(site, form, cancellation);
        sites.Forget();
        return saved;
    }

    // What is no number is as wrong as too few years, and refused with the same words.
    private static int? Years(string? typed) =>
        string.IsNullOrWhiteSpace(typed) ? null
        : int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out var years)
            ? years
        : 0;
}
