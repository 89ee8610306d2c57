namespace WeldTrace.Web.Components.Tables;

/// <summary>The head of one column.</summary>
/// <param name="Title">The words shown.</param>
/// <param name="SortKey">What the address says when the list is sorted by it; null when it cannot be.</param>
/// <param name="Numeric">Figures, set to the right.</param>
public sealed record TableHead(string Title, string? SortKey = null, bool Numeric = false);
