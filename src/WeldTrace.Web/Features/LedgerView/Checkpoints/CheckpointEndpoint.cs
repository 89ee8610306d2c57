namespace WeldTrace.Web.Features.LedgerView.Checkpoints;

public static class CheckpointEndpoint
{
    public static void MapCheckpoints(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.CheckpointFilePattern,
            async (
                long treeSize,
                string file,
                CheckpointListReader reader,
                CancellationToken cancellation
            ) =>
                await reader.FindAsync(treeSize, cancellation) is { } found
                && CheckpointFiles.Read(found.Checkpoint, found.Stamp, file) is { } bytes
                    ? Results.File(
                        bytes,
                        "application/octet-stream",
                        CheckpointFiles.Name(treeSize, file)
                    )
                    : Results.NotFound()
        );
}
