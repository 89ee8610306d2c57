using System.Text.Json;
using System.Text.Json.Serialization;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Persistence.ProcessLogStore;

/// <summary>The header of a process log as it stands in its row.</summary>
internal static class HeaderJson
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        IgnoreReadOnlyProperties = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
    };

    public static string Write(LogHeader header) => JsonSerializer.Serialize(header, Options);

    /// <exception cref="InvalidDataException">The row holds no header.</exception>
    public static LogHeader Read(string json) =>
        JsonSerializer.Deserialize<LogHeader>(json, Options)
        ?? throw new InvalidDataException("The stored header of the process log is empty.");
}
