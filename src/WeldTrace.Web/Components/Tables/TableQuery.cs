using System.Globalization;
using Microsoft.AspNetCore.WebUtilities;

namespace WeldTrace.Web.Components.Tables;

/// <summary>How a list is sorted, filtered and paged, as its address says it. A minus before the sort key turns the order.</summary>
public sealed record TableQuery
{
    private static readonly string[] OwnKeys = ["sort", "page"];

    /// <summary>Address of the list without its query.</summary>
    public required string Path { get; init; }

    /// <summary>Sort key, one of those that the list allows; null for its own order.</summary>
    public string? Sort { get; init; }

    public bool Descending { get; init; }

    /// <summary>Page, from 1.</summary>
    public int Page { get; init; } = 1;

    public int PageSize { get; init; } = 50;

    /// <summary>Every other value of the address, by its name; empty ones are left out.</summary>
    public IReadOnlyDictionary<string, string> Filters { get; init; } =
        new Dictionary<string, string>();

    /// <summary>Rows before this page.</summary>
    public int Skip => (Page - 1) * PageSize;

    /// <summary>The filter's value, or empty.</summary>
    public string Filter(string name) => Filters.GetValueOrDefault(name, "");

    /// <summary>Reads an address; what cannot be meant is left out.</summary>
    /// <param name="address">Whole address of the page.</param>
    /// <param name="sortKeys">Keys that the list can be sorted by.</param>
    /// <param name="pageSize">Rows of a page.</param>
    public static TableQuery Read(Uri address, IEnumerable<string> sortKeys, int pageSize = 50)
    {
        var values = QueryHelpers.ParseQuery(address.Query);
        var wanted = values.TryGetValue("sort", out var sort) ? sort.ToString() : "";
        var key = sortKeys.FirstOrDefault(k => k == wanted.TrimStart('-'));
        var page = int.TryParse(
            values.TryGetValue("page", out var text) ? text.ToString() : "",
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var number
        )
            ? Math.Clamp(number, 1, 1_000_000)
            : 1;
        return new TableQuery
        {
            Path = address.AbsolutePath,
            Sort = key,
            Descending = key is not null && wanted.StartsWith('-'),
            Page = page,
            PageSize = pageSize,
            Filters = values
                .Where(v => !OwnKeys.Contains(v.Key) && !string.IsNullOrWhiteSpace(v.Value))
                .ToDictionary(v => v.Key, v => v.Value.ToString()),
        };
    }

    /// <summary>Address of the list sorted by a key; a second time turns the order.</summary>
    public string SortedBy(string key) =>
        Address(Path, key == Sort && !Descending ? "-" + key : key, 1);

    /// <summary>Address of another page of the same list.</summary>
    public string OnPage(int page) => Address(Path, SortValue, page);

    /// <summary>Address of the whole list, in this order and with these filters, at another path.</summary>
    public string WholeAt(string path) => Address(path, SortValue, 1);

    private string? SortValue => Sort is null ? null : (Descending ? "-" : "") + Sort;

    private string Address(string path, string? sort, int page)
    {
        var values = Filters.ToDictionary(f => f.Key, string? (f) => f.Value);
        if (sort is not null)
        {
            values["sort"] = sort;
        }

        if (page > 1)
        {
            values["page"] = page.ToString(CultureInfo.InvariantCulture);
        }

        return QueryHelpers.AddQueryString(path, values);
    }
}
