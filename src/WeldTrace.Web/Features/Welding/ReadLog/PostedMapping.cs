using System.Globalization;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Signals;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Features.Welding.ReadLog;

/// <summary>The mapping that a person made on the page, for the columns that the file really has.</summary>
internal static class PostedMapping
{
    public static LogMapping Of(LogPreview preview, ReadLogForm form) =>
        new([
            .. preview.Columns.Select(
                (column, i) => Column(column.Header, form.Columns.ElementAtOrDefault(i))
            ),
        ]);

    /// <summary>A mapping as the form shows it.</summary>
    public static List<ReadLogColumn> Fill(LogMapping mapping) =>
        [
            .. mapping.Columns.Select(c => new ReadLogColumn
            {
                Channel = c.Channel.ToString(),
                Unit = c.Unit,
                Factor = c.Factor.ToString("R", CultureInfo.InvariantCulture),
                Filter = c.Filter?.Kind.ToString(),
                FilterSamples = c.Filter?.Samples.ToString(CultureInfo.InvariantCulture),
            }),
        ];

    // A factor that is no number becomes zero, which the check of the mapping refuses with its column's name.
    private static ColumnMapping Column(string header, ReadLogColumn? posted) =>
        new(
            header,
            posted is null ? LogChannel.Ignored : MachineColumns.Channel(posted.Channel),
            posted?.Unit?.Trim() ?? "",
            string.IsNullOrWhiteSpace(posted?.Factor) ? 1
                : Measured.TryRead(posted.Factor, "", out var factor) ? factor.InUnit()
                : 0
        )
        {
            Filter = FilterOf(posted),
        };

    // A number of samples that is no number becomes zero, which the check of the mapping refuses with its column's name.
    private static SampleFilter? FilterOf(ReadLogColumn? posted) =>
        Enum.TryParse<SampleFilterKind>(posted?.Filter, out var kind) && Enum.IsDefined(kind)
            ? new SampleFilter(
                kind,
                int.TryParse(
                    posted.FilterSamples,
                    NumberStyles.None,
                    CultureInfo.InvariantCulture,
                    out var samples
                )
                    ? samples
                    : 0
            )
            : null;
}
