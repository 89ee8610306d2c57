using System.Text;
using WeldTrace.ProcessLogs.Reading;
using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs;

/// <summary>Writes a kept log as CSV again, in the dialect of the file it came from: same log, same bytes.</summary>
public static class ProcessLogExport
{
    /// <summary>Writes the log and gives the SHA-256 of what was written, lower-case hexadecimal.</summary>
    public static string WriteCsv(ProcessLog log, Stream destination)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(destination);
        using var hashed = new HashedStream(destination);
        using var encoder = Encoder(hashed, log.Header.Dialect);
        using var renderer = new CsvRenderer(log);
        while (renderer.TryNext(out var piece))
        {
            (encoder ?? hashed).Write(piece.Span);
        }

        encoder?.Dispose();
        return hashed.Sha256();
    }

    /// <summary>Writes the log and gives the SHA-256 of what was written, lower-case hexadecimal.</summary>
    public static async Task<string> WriteCsvAsync(
        ProcessLog log,
        Stream destination,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(destination);
        await using var hashed = new HashedStream(destination);
        await using var encoder = Encoder(hashed, log.Header.Dialect);
        using var renderer = new CsvRenderer(log);
        while (renderer.TryNext(out var piece))
        {
            await (encoder ?? hashed).WriteAsync(piece, cancellation);
        }

        if (encoder is not null)
        {
            await encoder.DisposeAsync();
        }

        return hashed.Sha256();
    }

    private static Stream? Encoder(HashedStream hashed, LogDialect dialect) =>
        dialect.Encoding == LogEncoding.Utf8
            ? null
            : Encoding.CreateTranscodingStream(
                hashed,
                dialect.Encoding.ToText(),
                Encoding.UTF8,
                leaveOpen: true
            );
}
