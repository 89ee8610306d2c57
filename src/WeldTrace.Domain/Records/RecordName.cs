namespace WeldTrace.Domain.Records;

/// <summary>A record as another one names it, so that a page can lead there.</summary>
/// <param name="Kind">Kind of record, as in the ledger.</param>
/// <param name="Id">Identity.</param>
/// <param name="Label">How a person names it.</param>
public sealed record RecordName(string Kind, Guid Id, string Label)
{
    /// <summary>The name of a record.</summary>
    public static RecordName Of(Record record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return new(record.Kind, record.Id, record.Label);
    }
}
