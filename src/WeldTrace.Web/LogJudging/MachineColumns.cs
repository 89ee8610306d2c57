using WeldTrace.Domain.Equipment;
using WeldTrace.ProcessLogs;
using MachineColumn = WeldTrace.Domain.Equipment.LogColumn;

namespace WeldTrace.Web.LogJudging;

/// <summary>The columns of a machine's logs, as its record remembers them and as the reader uses them.</summary>
public static class MachineColumns
{
    /// <summary>The remembered mapping; null when the machine has brought no log yet.</summary>
    public static LogMapping? Remembered(this Machine machine)
    {
        ArgumentNullException.ThrowIfNull(machine);
        return machine.LogColumns.Count == 0
            ? null
            : new LogMapping([
                .. machine.LogColumns.Select(c => new ColumnMapping(
                    c.Column,
                    Channel(c.Channel),
                    c.Unit,
                    c.Factor
                )
                {
                    Filter = c.Filter,
                }),
            ]);
    }

    /// <summary>A mapping as the machine's record remembers it.</summary>
    public static IReadOnlyList<MachineColumn> ToRemember(LogMapping mapping)
    {
        ArgumentNullException.ThrowIfNull(mapping);
        return
        [
            .. mapping.Columns.Select(c => new MachineColumn(
                c.Column,
                c.Channel.ToString(),
                c.Unit,
                c.Factor
            )
            {
                Filter = c.Filter,
            }),
        ];
    }

    /// <summary>The channel of a remembered or posted word; a word of no channel is a column that is not judged.</summary>
    public static LogChannel Channel(string? word) =>
        Enum.TryParse<LogChannel>(word, out var channel) && Enum.IsDefined(channel)
            ? channel
            : LogChannel.Other;
}
