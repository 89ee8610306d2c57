namespace WeldTrace.Persistence.Roles;

/// <summary>Names of the tables that the application's role may read and add to, but never change or empty.</summary>
public sealed record AppendOnlyTables(IReadOnlyCollection<string> Names);
