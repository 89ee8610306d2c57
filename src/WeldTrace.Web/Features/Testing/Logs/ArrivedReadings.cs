using WeldTrace.Domain.Records;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Files;

namespace WeldTrace.Web.Features.Testing.Logs;

/// <summary>Readings that the bench has sent for the leak test of a vessel, until an inspector takes them; the newest only, for a day.</summary>
public sealed class ArrivedReadings(StagedLogs files)
{
    /// <summary>What is said when they are not here any more.</summary>
    public static Refusal Gone { get; } =
        new(
            "gone",
            "The readings that arrived are not here any more, or newer ones came. Load the page anew, or type the readings in."
        );

    /// <summary>Keeps readings; earlier ones of the same vessel go.</summary>
    public Task<Outcome<StagedLog>> KeepAsync(
        Guid vesselId,
        string system,
        IFormFile log,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        return files.KeepAsync(
            vesselId,
            $"{system}, {StagedLogs.Clean(log.FileName)}".Replace('/', ' '),
            log.OpenReadStream(),
            PressureLog.MostBytes,
            cancellation
        );
    }

    /// <summary>What waits for a vessel; null when nothing does.</summary>
    public Task<StagedLog?> FindAsync(Guid vesselId, CancellationToken cancellation) =>
        files.NewestAsync(vesselId, cancellation);

    /// <summary>Reads what waits.</summary>
    public async Task<Outcome<BroughtLog>> ReadAsync(
        Guid vesselId,
        Guid id,
        string field,
        CancellationToken cancellation
    )
    {
        if (await files.FindAsync(vesselId, id, cancellation) is not { } found)
        {
            return Gone;
        }

        await using var stream = files.Open(vesselId, found);
        var file = new FormFile(stream, 0, stream.Length, field, found.FileName);
        return await BenchLogReader.ReadAsync(file, field, cancellation);
    }

    /// <summary>Removes what a test has taken.</summary>
    public void Remove(Guid vesselId, Guid id) => files.Remove(vesselId, new StagedLog(id, ""));
}
