using WeldTrace.Engineering;

namespace WeldTrace.Web.Components.Figures;

/// <summary>How one figure of a record was worked out, under the name by which its address asks for it.</summary>
public sealed record NamedWorking(string Key, Working Working);

/// <summary>A record with the workings of the figures on its page.</summary>
/// <param name="Label">The record in words.</param>
/// <param name="Href">Its page.</param>
/// <param name="Workings">One for each computed figure.</param>
public sealed record RecordWorkings(
    string Label,
    string Href,
    IReadOnlyList<NamedWorking> Workings
);

/// <summary>
/// Works the figures of one kind of record out again, from the record as it is stored and by the code that its page uses. The address of a
/// working names record and figure, never a number.
/// </summary>
public interface IWorkings
{
    /// <summary>Word for the kind of record in the address.</summary>
    string Kind { get; }

    /// <summary>The workings of a record; null when there is no such record.</summary>
    Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation);
}
