using System.Globalization;
using System.Text;
using WeldTrace.Persistence.LedgerStore;

namespace WeldTrace.Web.Features.LedgerView.Checkpoints;

/// <summary>A checkpoint as files that common tools check.</summary>
public static class CheckpointFiles
{
    public const string Statement = "json";
    public const string Signature = "sig";
    public const string Key = "pem";
    public const string Stamp = "token.der";

    /// <summary>Bytes of one file; null when the checkpoint has no such file.</summary>
    public static byte[]? Read(CheckpointRow checkpoint, CheckpointStampRow? stamp, string file)
    {
        ArgumentNullException.ThrowIfNull(checkpoint);
        return file switch
        {
            Statement => checkpoint.StatementBytes(),
            Signature => checkpoint.Signature,
            Key => Encoding.ASCII.GetBytes(checkpoint.PublicKeyPem),
            Stamp => stamp?.Token,
            _ => null,
        };
    }

    /// <summary>Name of a file; they sort by size of the ledger.</summary>
    public static string Name(long treeSize, string file) =>
        string.Create(CultureInfo.InvariantCulture, $"checkpoint-{treeSize:D12}.{file}");

    /// <summary>Writes the files that are not there yet, each whole or not at all.</summary>
    /// <exception cref="IOException">The folder can't be written.</exception>
    public static async Task PublishAsync(
        string folder,
        CheckpointRow checkpoint,
        CheckpointStampRow? stamp,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(checkpoint);
        Directory.CreateDirectory(folder);
        foreach (var file in new[] { Key, Signature, Stamp, Statement })
        {
            var path = Path.Combine(folder, Name(checkpoint.TreeSize, file));
            if (Read(checkpoint, stamp, file) is { } bytes && !File.Exists(path))
            {
                var draft = path + ".part";
                await File.WriteAllBytesAsync(draft, bytes, cancellation);
                File.Move(draft, path, overwrite: true);
            }
        }
    }
}
