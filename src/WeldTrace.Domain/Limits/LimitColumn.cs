using System.Globalization;

namespace WeldTrace.Domain.Limits;

/// <summary>What a cell takes.</summary>
public enum CellKind
{
    /// <summary>Words, needed.</summary>
    Words,

    /// <summary>A number of zero or more, needed.</summary>
    Number,

    /// <summary>A number of zero or more, or nothing.</summary>
    OptionalNumber,

    /// <summary>One of the column's choices.</summary>
    Choice,
}

/// <summary>A column of a table.</summary>
/// <param name="Name">Head of the column, with the unit.</param>
/// <param name="Takes">What its cells take.</param>
/// <param name="Choices">Permitted words of a choice.</param>
public sealed record LimitColumn(string Name, CellKind Takes, params IReadOnlyList<string> Choices)
{
    private const int LongestCell = 120;

    /// <summary>What is wrong with a cell, to follow its name; null when it is good.</summary>
    public string? Against(string cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell.Length > LongestCell
            ? $"is longer than {LongestCell} characters; shorten it"
            : Takes switch
            {
                CellKind.Words => cell.Length == 0 ? "is empty; fill it in" : null,
                CellKind.Choice => Choices.Contains(cell)
                    ? null
                    : $"must be one of: {string.Join(", ", Choices)}",
                CellKind.OptionalNumber when cell.Length == 0 => null,
                _ => IsNumber(cell)
                    ? null
                    : $"'{cell}' must be a number of zero or more, with a decimal point",
            };
    }

    private static bool IsNumber(string cell) =>
        decimal.TryParse(cell, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _);
}
