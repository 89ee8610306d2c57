using System.Text.Json;
using System.Text.Json.Serialization;

namespace WeldTrace.Web.Features.Trace.Histories;

/// <summary>
/// Keeps orders and their files in the data folder, a folder for each. An order is written whole under another name
/// first, and its file gets its name only when it is whole: what a crash leaves is never offered.
/// </summary>
public sealed partial class OrderFiles(HistorySettings settings, ILogger<OrderFiles> log)
{
    private const string OrderName = "order.json";
    private const string FileName = "histories.zip";
    private const UnixFileMode OwnerOnly =
        UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter() },
        IgnoreReadOnlyProperties = true,
    };

    /// <summary>Whether so many bytes more leave the disk enough room.</summary>
    public bool HasRoomFor(long bytes)
    {
        Make(settings.Folder);
        var free = new DriveInfo(settings.Folder).AvailableFreeSpace;
        return free - bytes >= settings.LeaveFree;
    }

    /// <summary>Every order of the folder. What belongs to none, or was not finished, is deleted.</summary>
    public IReadOnlyList<HistoryOrder> Load()
    {
        if (!Directory.Exists(settings.Folder))
        {
            return [];
        }

        List<HistoryOrder> orders = [];
        foreach (var folder in Directory.EnumerateDirectories(settings.Folder))
        {
            if (Read(folder) is not { } order || FolderOf(order.Id) != folder)
            {
                Directory.Delete(folder, recursive: true);
                continue;
            }

            DeleteAllBut(folder, order.State == OrderState.Ready ? FileName : null);
            orders.Add(order);
        }

        return orders;
    }

    public void Save(HistoryOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var folder = FolderOf(order.Id);
        Make(folder);
        var draft = Path.Combine(folder, OrderName + ".new");
        using (var file = new FileStream(draft, FileMode.Create, FileAccess.Write))
        {
            JsonSerializer.Serialize(file, order, Options);
            file.Flush(flushToDisk: true);
        }

        File.Move(draft, Path.Combine(folder, OrderName), overwrite: true);
    }

    /// <summary>A file of an order that is not whole yet.</summary>
    public FileStream Draft(HistoryOrder order, string name)
    {
        ArgumentNullException.ThrowIfNull(order);
        return new FileStream(
            Path.Combine(FolderOf(order.Id), name + ".part"),
            new FileStreamOptions
            {
                Mode = FileMode.Create,
                Access = FileAccess.ReadWrite,
                Share = FileShare.Read | FileShare.Delete,
                Options = FileOptions.Asynchronous,
                BufferSize = 128 * 1024,
            }
        );
    }

    /// <summary>Gives a whole file its name.</summary>
    public void Finish(HistoryOrder order, FileStream draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        draft.Flush(flushToDisk: true);
        File.Move(draft.Name, PathOf(order), overwrite: true);
        DeleteAllBut(FolderOf(order.Id), FileName);
    }

    /// <summary>Opens the whole file of an order.</summary>
    public FileStream Open(HistoryOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return new(
            PathOf(order),
            new FileStreamOptions
            {
                Share = FileShare.ReadWrite | FileShare.Delete,
                Options = FileOptions.Asynchronous,
                BufferSize = 128 * 1024,
            }
        );
    }

    /// <summary>Whether the whole file of an order is where it belongs.</summary>
    public bool IsThere(HistoryOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return new FileInfo(PathOf(order)) is { Exists: true } file && file.Length == order.Bytes;
    }

    /// <summary>Deletes what was made of an order, and leaves what is known of it.</summary>
    public void DeleteFiles(HistoryOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        DeleteAllBut(FolderOf(order.Id), null);
    }

    public void Forget(HistoryOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        if (Directory.Exists(FolderOf(order.Id)))
        {
            Directory.Delete(FolderOf(order.Id), recursive: true);
        }
    }

    private string PathOf(HistoryOrder order) => Path.Combine(FolderOf(order.Id), FileName);

    private string FolderOf(Guid id) => Path.Combine(settings.Folder, id.ToString("N"));

    private static void Make(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(folder, OwnerOnly);
        }
    }

    private HistoryOrder? Read(string folder)
    {
        var path = Path.Combine(folder, OrderName);
        try
        {
            return File.Exists(path)
                ? JsonSerializer.Deserialize<HistoryOrder>(File.ReadAllBytes(path), Options)
                : null;
        }
        catch (JsonException failure)
        {
            LogUnreadable(failure, path);
            return null;
        }
    }

    private static void DeleteAllBut(string folder, string? kept)
    {
        if (!Directory.Exists(folder))
        {
            return;
        }

        foreach (var file in Directory.EnumerateFiles(folder))
        {
            if (Path.GetFileName(file) is var name && name != OrderName && name != kept)
            {
                File.Delete(file);
            }
        }
    }

    [LoggerMessage(LogLevel.Warning, "The order of histories {Path} can't be read and is deleted.")]
    private partial void LogUnreadable(Exception failure, string path);
}
