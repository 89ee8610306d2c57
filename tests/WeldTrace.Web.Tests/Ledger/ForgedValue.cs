namespace WeldTrace.Web.Tests.Ledger;

internal static class ForgedValue
{
    /// <summary>Another value of the same type: an expression of SQL. An instant is dated back.</summary>
    public static string Other(string column, string type) =>
        type switch
        {
            "text" or "character varying" or "character" =>
                $"overlay({column} placing 'x' from 1 for 1)",
            "boolean" => $"NOT {column}",
            "uuid" => "gen_random_uuid()",
            "timestamp with time zone" => $"{column} - interval '1 second'",
            "date" => $"{column} - 1",
            // The first number or word in it becomes another.
            "jsonb" => $"regexp_replace({column}::text, ': (\"?)([0-9a-zA-Z])', ': \\1"
                + "9')::jsonb",
            "ARRAY" => $"{column}[2:]",
            "bytea" => $"{column} || '\\x00'::bytea",
            _ => $"{column} + 100000",
        };
}
