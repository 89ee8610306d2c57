using System.Runtime.InteropServices;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Looks at the samples of a log for what a person should know before trusting them.</summary>
internal sealed class LogObserver
{
    private const int MostSteps = 4096;
    private readonly LogHeader _header;
    private readonly LogColumn _time;
    private readonly ColumnObserver[] _columns;
    private readonly ObservationList _found = new();
    private RowObserver? _rows;
    private LogColumn? _telling;
    private ColumnObserver[]? _restless;
    private uint[] _folded = [];

    public LogObserver(ProcessLog log, LogColumn time)
    {
        (_header, _time) = (log.Header, time);
        _columns =
        [
            .. _header
                .Columns.Where(column => column.Channel != LogChannel.Time)
                .Select(column => new ColumnObserver(column, log, _found)),
        ];
    }

    public IReadOnlyList<LogObservation> Complete()
    {
        _rows?.Complete();
        return _found.InOrder;
    }

    public void Add(
        LogFrames frames,
        ReadOnlySpan<double> seconds,
        IReadOnlyList<FramePiece> pieces
    )
    {
        _rows ??= new RowObserver(
            Median(seconds) ?? _header.SamplePeriodSeconds,
            _header.SampleCount,
            _found
        );
        foreach (var piece in pieces)
        {
            if (piece.Phase == WeldPhase.Idle)
            {
                Interrupt(frames, seconds, piece.From);
            }
            else
            {
                Look(frames, seconds, piece.From, piece.To);
            }
        }

        _rows.Add(frames.First, seconds, Telling(frames), row => Hash(frames, row));
    }

    private void Interrupt(LogFrames frames, ReadOnlySpan<double> seconds, int row)
    {
        foreach (var column in _restless ?? [])
        {
            column.Interrupt(frames.First + row, seconds[Math.Max(0, row - 1)]);
        }
    }

    private void Look(LogFrames frames, ReadOnlySpan<double> seconds, int from, int to)
    {
        if (_restless is null)
        {
            _restless =
            [
                .. _columns.Where(c =>
                    ColumnObserver.IsRestless(frames.Digits(c.Column)[from..to])
                ),
            ];
            _telling = _restless is [var one, ..] ? one.Column : null;
        }

        foreach (var column in _restless)
        {
            var first = frames.First + from;
            if (frames.Whole(column.Column) is { IsEmpty: false } whole)
            {
                column.Add(first, seconds[from..to], whole[from..to]);
            }
            else
            {
                column.Add(first, seconds[from..to], frames.Digits(column.Column)[from..to]);
            }
        }
    }

    private ReadOnlySpan<uint> Telling(LogFrames frames)
    {
        var column = _telling ?? _time;
        if (frames.Whole(column) is { IsEmpty: false } whole)
        {
            return MemoryMarshal.Cast<int, uint>(whole);
        }

        var digits = frames.Digits(column);
        _folded = _folded.Length < digits.Length ? new uint[digits.Length] : _folded;
        for (var i = 0; i < digits.Length; i++)
        {
            _folded[i] = column.IsFixedDecimal
                ? unchecked((uint)(long)digits[i])
                : (uint)digits[i].GetHashCode();
        }

        return _folded.AsSpan(0, digits.Length);
    }

    private ulong Hash(LogFrames frames, int row)
    {
        var hash = 0xCBF29CE484222325UL;
        foreach (var column in _columns)
        {
            var bits = frames.Whole(column.Column) is { IsEmpty: false } whole
                ? BitConverter.DoubleToUInt64Bits(whole[row])
                : BitConverter.DoubleToUInt64Bits(frames.Digits(column.Column)[row]);
            hash = unchecked((hash ^ bits) * 0x100000001B3);
            hash ^= hash >> 29;
        }

        return hash;
    }

    private static double? Median(ReadOnlySpan<double> seconds)
    {
        if (seconds.Length < 3)
        {
            return null;
        }

        var steps = new double[Math.Min(seconds.Length, MostSteps) - 1];
        for (var i = 0; i < steps.Length; i++)
        {
            steps[i] = seconds[i + 1] - seconds[i];
        }

        Array.Sort(steps);
        return steps[steps.Length / 2];
    }
}
