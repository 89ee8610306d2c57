using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Importing;

/// <summary>A record made from a line of a list, or why there is none.</summary>
/// <param name="Row">Line.</param>
/// <param name="Name">What the record is called.</param>
/// <param name="What">What it is, in words.</param>
/// <param name="Record">The record with everything done to it; null when it was refused.</param>
/// <param name="Refusals">Everything that speaks against it.</param>
public sealed record ImportedRecord<T>(
    ImportRow Row,
    string Name,
    string What,
    T? Record,
    IReadOnlyList<Refusal> Refusals
)
    where T : Record;

/// <summary>Turns lines into records, all or none.</summary>
public static class ImportRecords
{
    /// <summary>Tells what an import would do; does it when it is confirmed and nothing is wrong.</summary>
    /// <param name="db">Context that saves.</param>
    /// <param name="records">Records of the lines.</param>
    /// <param name="isTaken">Whether a record of that name exists already.</param>
    /// <param name="isConfirmed">Whether to import.</param>
    /// <param name="cancellation">Imports nothing.</param>
    public static async Task<ImportResult> FinishAsync<T>(
        this WeldTraceDbContext db,
        IReadOnlyList<ImportedRecord<T>> records,
        IReadOnlySet<string> isTaken,
        bool isConfirmed,
        CancellationToken cancellation
    )
        where T : Record
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(isTaken);
        var twice = records
            .GroupBy(r => r.Name)
            .Where(g => g.Count() > 1)
            .ToDictionary(g => g.Key, g => g.First().Row.Line);
        List<ImportLine> lines = [];
        List<Refusal> problems = [];
        foreach (var record in records)
        {
            List<Refusal> against = [.. record.Refusals];
            if (twice.TryGetValue(record.Name, out var first) && first != record.Row.Line)
            {
                against.Add(
                    new("twice", $"'{record.Name}' stands on line {first} already; keep one.")
                );
            }

            if (isTaken.Contains(record.Name))
            {
                against.Add(
                    new("exists", $"'{record.Name}' is entered already; take the line out.")
                );
            }

            problems.AddRange(against.Select(record.Row.At));
            lines.Add(
                new(record.Row.Line, record.Name, record.What, [.. against.Select(r => r.Sentence)])
            );
        }

        var result = new ImportResult(lines, problems, false);
        if (!isConfirmed || !result.IsClean)
        {
            return result;
        }

        db.AddRange(records.Select(r => r.Record!));
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted
            ? result with
            {
                IsDone = true,
            }
            : result with
            {
                Problems = saved.Refusals,
            };
    }
}
