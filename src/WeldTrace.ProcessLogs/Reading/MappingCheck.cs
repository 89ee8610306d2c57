using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Reading;

internal static class MappingCheck
{
    public static IReadOnlyList<LogProblem> Of(LogMapping mapping) =>
        [
            .. Time(mapping),
            .. Repeated(mapping),
            .. mapping
                .Columns.Where(column => column.Channel != LogChannel.Ignored)
                .SelectMany(Column),
        ];

    private static IEnumerable<LogProblem> Time(LogMapping mapping)
    {
        if (mapping.Columns.All(column => column.Channel != LogChannel.Time))
        {
            yield return Invalid(
                "No column is set to time.",
                "Set the column that holds the time stamp to 'time'."
            );
        }
    }

    private static IEnumerable<LogProblem> Repeated(LogMapping mapping)
    {
        var names = mapping
            .Columns.GroupBy(column => column.Column)
            .Where(group => group.Count() > 1);
        foreach (var name in names)
        {
            yield return Invalid(
                $"Column '{LogText.Of(name.Key)}' is mapped {name.Count()} times.",
                "Map each column once.",
                name.Key
            );
        }

        var channels = mapping
            .Columns.GroupBy(column => column.Channel)
            .Where(group => group.Count() > 1 && !LogChannels.MayRepeat(group.Key));
        foreach (var channel in channels)
        {
            var columns = LogText.List(channel.Select(column => column.Column));
            yield return Invalid(
                $"Columns {columns} are all set to {LogChannels.NameOf(channel.Key)}.",
                "Keep one of them and set the others to 'other'."
            );
        }
    }

    private static IEnumerable<LogProblem> Column(ColumnMapping column)
    {
        var name = LogText.Of(column.Column);
        if (!double.IsFinite(column.Factor) || column.Factor == 0)
        {
            yield return Invalid(
                $"Column '{name}' has a factor that is zero or not finite.",
                "Give 1, -1 or another finite factor.",
                column.Column
            );
        }
        else if (column is { Channel: LogChannel.Time, Factor: < 0 })
        {
            yield return Invalid(
                $"Column '{name}' is the time and has a negative factor.",
                "Give 1.",
                column.Column
            );
        }

        if (column.Filter is { IsSensible: false })
        {
            yield return Invalid(
                $"Column '{name}' has a filter over a number of samples that can't be taken.",
                $"Give an odd number of samples from {SampleFilter.Fewest} to {SampleFilter.Most}, or no filter.",
                column.Column
            );
        }

        if (
            column.Filter is not null
            && (column.Channel == LogChannel.Time || LogChannels.MayRepeat(column.Channel))
        )
        {
            yield return Invalid(
                $"Column '{name}' is set to {LogChannels.NameOf(column.Channel)}, which is never judged, and has a filter.",
                "Choose no filter for it.",
                column.Column
            );
        }

        var quantity = LogChannels.QuantityOf(column.Channel);
        if (quantity != LogQuantity.None && LogUnits.Find(column.Unit)?.Quantity != quantity)
        {
            yield return UnknownUnit(column, quantity);
        }
    }

    private static LogProblem UnknownUnit(ColumnMapping column, LogQuantity quantity)
    {
        var unit = column.Unit.Length == 0 ? "no unit" : $"the unit '{LogText.Of(column.Unit)}'";
        var choices = string.Join(", ", LogUnits.Of(quantity).Select(known => known.Symbol));
        return new LogProblem(
            LogProblemCode.UnknownUnit,
            $"Column '{LogText.Of(column.Column)}' has {unit}, which is not known for {LogChannels.NameOf(column.Channel)}.",
            $"Choose one of {choices}."
        )
        {
            Column = column.Column,
        };
    }

    private static LogProblem Invalid(string sentence, string remedy, string? column = null) =>
        new(LogProblemCode.MappingInvalid, sentence, remedy) { Column = column };
}
