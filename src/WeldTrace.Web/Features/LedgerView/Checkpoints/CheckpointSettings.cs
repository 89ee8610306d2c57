using WeldTrace.Persistence.Roles;

namespace WeldTrace.Web.Features.LedgerView.Checkpoints;

/// <summary>How often checkpoints are signed and who else gets them: section <c>Checkpoints</c> of the configuration.</summary>
public sealed class CheckpointSettings(IConfiguration configuration, DatabaseSettings database)
{
    /// <summary>Time between two checkpoints, when the ledger grew; <c>Checkpoints:Minutes</c>, 1 or more.</summary>
    public TimeSpan Period =>
        TimeSpan.FromMinutes(
            Math.Max(1, configuration.GetValue<int?>("Checkpoints:Minutes") ?? 60)
        );

    /// <summary>Where each checkpoint is also written as files, for a witness to fetch; <c>Checkpoints:Folder</c>.</summary>
    public string Folder =>
        configuration["Checkpoints:Folder"] is { Length: > 0 } given
            ? Path.GetFullPath(given)
            : Path.Combine(database.Folder, "checkpoints");

    /// <summary>A service of RFC 3161 that stamps each checkpoint; <c>Checkpoints:TimeStampService</c>, none by default.</summary>
    public Uri? TimeStampService =>
        Uri.TryCreate(
            configuration["Checkpoints:TimeStampService"],
            UriKind.Absolute,
            out var service
        )
            ? service
            : null;
}
