namespace WeldTrace.Persistence.Roles;

internal static class SqlName
{
    public static string Quote(string name) =>
        $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
