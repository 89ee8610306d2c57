using Npgsql;

namespace WeldTrace.Web.Tests.Ledger;

/// <summary>One row of a record, changed, removed, given another identity, dated back, or given the values of another row.</summary>
/// <param name="What">What was done to it.</param>
/// <param name="Table">Where.</param>
/// <param name="Id">Identity of the record that is not as it was.</param>
internal sealed record Mutation(string What, string Table, Guid Id)
{
    /// <summary>Changes most rows of a table, each in its own way.</summary>
    public static async Task<IReadOnlyList<Mutation>> MakeAsync(
        Forger forger,
        ForgedTable table,
        Random random
    )
    {
        List<Mutation> made = [];
        var ids = await forger.IdsAsync($"SELECT id FROM {table.Name} ORDER BY id");
        foreach (var id in ids.Where(_ => random.Next(10) > 0))
        {
            var (what, statement) = Choose(table, id, random);
            if (await IsDoneAsync(forger, statement))
            {
                made.Add(new Mutation(what, table.Name, id));
            }
        }

        return made;
    }

    private static async Task<bool> IsDoneAsync(Forger forger, string statement)
    {
        try
        {
            return await forger.RunAsync(statement) == 1;
        }
        catch (PostgresException refused)
            when (refused.SqlState == PostgresErrorCodes.UniqueViolation)
        {
            // What has to be unique can't be taken from another row: this change was not made.
            return false;
        }
    }

    /// <summary>Whether a problem speaks of this record.</summary>
    public bool IsNamed(IReadOnlySet<string> problems, IReadOnlyDictionary<Guid, long> newest)
    {
        var number = newest[Id];
        return problems.Any(p =>
            p.Contains(Id.ToString(), StringComparison.Ordinal)
            || p.EndsWith(
                FormattableString.Invariant($" differs from ledger entry {number}."),
                StringComparison.Ordinal
            )
        );
    }

    private static (string What, string Statement) Choose(ForgedTable table, Guid id, Random random)
    {
        var where = $"WHERE id = '{id}'";
        var (column, type) = table.Columns[random.Next(table.Columns.Count)];
        return random.Next(10) switch
        {
            0 => ("removed", $"DELETE FROM {table.Name} {where}"),
            1 => ("renamed", $"UPDATE {table.Name} SET id = gen_random_uuid() {where}"),
            2 or 3 => (
                $"{column} of another row",
                $"""
                UPDATE {table.Name} SET {column} = other.{column} FROM {table.Name} other
                WHERE {table.Name}.id = '{id}' AND other.id = (
                    SELECT o.id FROM {table.Name} o WHERE o.{column} IS DISTINCT FROM (SELECT v.{column} FROM {table.Name} v WHERE v.id = '{id}')
                    ORDER BY o.id LIMIT 1)
                """
            ),
            _ => (
                $"{column} changed",
                $"UPDATE {table.Name} SET {column} = {ForgedValue.Other(column, type)} {where} AND {ForgedValue.Other(column, type)} IS DISTINCT FROM {column}"
            ),
        };
    }
}
