using System.Globalization;
using System.Numerics;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Looks for a channel that stands still, or that stays at the end of its range.</summary>
internal sealed class ColumnObserver
{
    private const int Sampled = 4096;
    private const double RestlessShare = 0.5;
    private const double StuckSeconds = 1;
    private const int FewestStuck = 20;
    private const int FewestSaturated = 5;

    private readonly LogColumn _column;
    private readonly ObservationList _found;
    private readonly int _stuckRows;
    private readonly double _lowest = double.PositiveInfinity;
    private readonly double _highest = double.NegativeInfinity;
    private Stretch _still;

    public ColumnObserver(LogColumn column, ProcessLog log, ObservationList found)
    {
        (_column, _found) = (column, found);
        _stuckRows = Math.Max(FewestStuck, (int)(StuckSeconds / log.Header.SamplePeriodSeconds));
        foreach (var chunk in log.Chunks)
        {
            if (chunk.Ordinal == column.Ordinal)
            {
                _lowest = Math.Min(_lowest, chunk.MinimumAsLogged * column.DigitsPerUnit);
                _highest = Math.Max(_highest, chunk.MaximumAsLogged * column.DigitsPerUnit);
            }
        }
    }

    public LogColumn Column => _column;

    /// <summary>Takes samples in which the tool is in the work.</summary>
    public void Add<T>(long first, ReadOnlySpan<double> seconds, ReadOnlySpan<T> values)
        where T : struct, INumber<T>
    {
        for (var i = 0; i < values.Length; )
        {
            if (_still.Count > 0 && double.CreateTruncating(values[i]) == _still.Value)
            {
                _still.Count++;
                i++;
                continue;
            }

            End(first + i, i > 0 ? seconds[i - 1] : seconds[0]);
            i += LeadingSamples.Restless(values[i..]);
            _still = new Stretch(double.CreateTruncating(values[i]), first + i, seconds[i], 1);
            i++;
        }
    }

    /// <summary>Whether a channel changes at every other sample or oftener: only of such a one is standing still telling.</summary>
    public static bool IsRestless(ReadOnlySpan<double> values)
    {
        var sampled = values[..Math.Min(Sampled, values.Length)];
        var changes = 0;
        for (var i = 1; i < sampled.Length; i++)
        {
            changes += sampled[i] != sampled[i - 1] ? 1 : 0;
        }

        return changes > RestlessShare * sampled.Length;
    }

    /// <summary>Ends the stretch of samples in the work.</summary>
    public void Interrupt(long row, double seconds)
    {
        End(row, seconds);
        _still = default;
    }

    private void End(long next, double seconds)
    {
        var isAtEnd = _still.Value == _lowest || _still.Value == _highest;
        if (_still.Count >= _stuckRows)
        {
            Tell(LogObservationKind.Stuck, next, seconds, "stands still at");
        }
        else if (isAtEnd && _still.Count >= FewestSaturated)
        {
            Tell(
                LogObservationKind.Saturated,
                next,
                seconds,
                $"stays at its {(_still.Value == _lowest ? "least" : "greatest")} value,"
            );
        }
    }

    private void Tell(LogObservationKind kind, long next, double seconds, string what) =>
        _found.Add(
            new(
                kind,
                _column.Name,
                _still.Row + 1,
                next,
                _still.Seconds,
                seconds,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Column '{_column.Name}' {what} {_still.Value / _column.DigitsPerUnit} {_column.Unit} from data row {_still.Row + 1} to {next}."
                )
            )
        );

    private record struct Stretch(double Value, long Row, double Seconds, long Count);
}
