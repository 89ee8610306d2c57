namespace WeldTrace.ProcessLogs.Reading;

internal static class MappingComparison
{
    private const string Remedy =
        "Export with the columns that the mapping of this machine knows, or make a new mapping for this file.";

    public static IReadOnlyList<LogProblem> Of(
        LogMapping mapping,
        IReadOnlyList<PreviewColumn> columns
    )
    {
        var table = Table(mapping, columns);
        return
        [
            .. table
                .Where(row => row.Agreement != ColumnAgreement.Same)
                .Select(row => Describe(row) with { Comparison = table }),
            .. Units(mapping, columns),
        ];
    }

    private static List<ColumnComparison> Table(
        LogMapping mapping,
        IReadOnlyList<PreviewColumn> columns
    )
    {
        var found = columns.Select(column => column.Header).ToHashSet(StringComparer.Ordinal);
        var expected = mapping
            .Columns.Select(column => column.Column)
            .ToHashSet(StringComparer.Ordinal);
        var table = new List<ColumnComparison>();
        var paired = new HashSet<int>();
        for (var i = 0; i < mapping.Columns.Count; i++)
        {
            var name = mapping.Columns[i].Column;
            var isRenamed =
                !found.Contains(name) && i < columns.Count && !expected.Contains(columns[i].Header);
            if (isRenamed)
            {
                paired.Add(i);
            }

            table.Add(
                found.Contains(name) ? new(name, name, ColumnAgreement.Same)
                : isRenamed ? new(name, columns[i].Header, ColumnAgreement.Renamed)
                : new(name, null, ColumnAgreement.Missing)
            );
        }

        table.AddRange(Others(expected, columns, paired));
        return table;
    }

    private static IEnumerable<ColumnComparison> Others(
        HashSet<string> expected,
        IReadOnlyList<PreviewColumn> columns,
        HashSet<int> paired
    )
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < columns.Count; i++)
        {
            var header = columns[i].Header;
            if (!seen.Add(header))
            {
                yield return new(null, header, ColumnAgreement.Repeated);
            }
            else if (!expected.Contains(header) && !paired.Contains(i))
            {
                yield return new(null, header, ColumnAgreement.Unknown);
            }
        }
    }

    private static LogProblem Describe(ColumnComparison row)
    {
        var (expected, found) = (LogText.Of(row.Expected ?? ""), LogText.Of(row.Found ?? ""));
        return row.Agreement switch
        {
            ColumnAgreement.Missing => new(
                LogProblemCode.MissingColumn,
                $"Column '{expected}' of the mapping is missing in the file.",
                Remedy
            )
            {
                Column = row.Expected,
            },
            ColumnAgreement.Renamed => new(
                LogProblemCode.RenamedColumn,
                $"Column '{found}' stands where the mapping has '{expected}'.",
                Remedy
            )
            {
                Column = row.Found,
            },
            ColumnAgreement.Repeated => new(
                LogProblemCode.RepeatedColumn,
                $"Column '{found}' stands in the file more than once.",
                "Give each column of the export its own name."
            )
            {
                Column = row.Found,
            },
            _ => new(
                LogProblemCode.UnknownColumn,
                $"Column '{found}' of the file is not in the mapping.",
                Remedy
            )
            {
                Column = row.Found,
            },
        };
    }

    private static IEnumerable<LogProblem> Units(
        LogMapping mapping,
        IReadOnlyList<PreviewColumn> columns
    )
    {
        foreach (
            var expected in mapping.Columns.Where(column => column.Channel != LogChannel.Ignored)
        )
        {
            var found = columns.FirstOrDefault(column => column.Header == expected.Column);
            if (
                found is { UnitIsBelow: true }
                && LogUnits.Find(found.Unit) is { } unit
                && unit != LogUnits.Find(expected.Unit)
            )
            {
                yield return new(
                    LogProblemCode.UnitChanged,
                    $"Column '{LogText.Of(expected.Column)}' is in {unit.Symbol} in the file, but in {LogText.Of(expected.Unit)} in the mapping.",
                    Remedy
                )
                {
                    Column = expected.Column,
                };
            }
        }
    }
}
