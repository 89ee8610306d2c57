namespace WeldTrace.ProcessLogs.Reading;

/// <summary>One field of each row: its name, and where it is kept; -1 when it is not.</summary>
internal sealed record FieldPlan(string Name, int Ordinal, ColumnMapping Mapping)
{
    public bool IsKept => Ordinal >= 0;

    public bool IsTime => Mapping.Channel == LogChannel.Time;

    /// <summary>Whether the time is written as a date with a time of day.</summary>
    public bool IsTimeStamp { get; } =
        Mapping.Channel == LogChannel.Time
        && LogUnits.Find(Mapping.Unit)?.Symbol == LogUnits.TimeStamp;

    /// <summary>The fields of a file in their order; the file and the mapping agree.</summary>
    public static FieldPlan[] Of(IReadOnlyList<PreviewColumn> columns, LogMapping mapping)
    {
        var next = 0;
        return
        [
            .. columns
                .Select(column => mapping.Columns.First(known => known.Column == column.Header))
                .Select(known => new FieldPlan(
                    known.Column,
                    known.Channel == LogChannel.Ignored ? -1 : next++,
                    known
                )),
        ];
    }
}
