using System.Globalization;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Looks for gaps and changes of the sample period, and for rows that come again.</summary>
internal sealed class RowObserver(double periodSeconds, ObservationList found)
{
    private const double GapPeriods = 5;
    private const double RateTolerance = 0.2;
    private const int RateBlock = 64;
    private const int BlocksUntilChange = 3;
    private const int AnchorMask = 31;
    private const int RepeatsUntilSure = 3;

    private readonly Dictionary<ulong, long> _anchors = [];
    private double _last = double.NaN;
    private double _blockStart;
    private int _inBlock;
    private int _oddBlocks;
    private bool _isOdd;
    private (long Row, double Seconds) _oddStart;
    private long _offset;
    private int _repeats;
    private (long Row, double Seconds) _repeatStart;
    private (long Row, double Seconds) _repeatEnd;

    /// <summary>Takes the next rows.</summary>
    /// <param name="first">Index of the first.</param>
    /// <param name="seconds">Their time stamps.</param>
    /// <param name="telling">The samples of the channel that changes most; rows are known again by it.</param>
    /// <param name="rowHash">A hash of all channels but time of one of these rows.</param>
    public void Add(
        long first,
        ReadOnlySpan<double> seconds,
        ReadOnlySpan<double> telling,
        Func<int, ulong> rowHash
    )
    {
        for (var i = 0; i < seconds.Length; i++)
        {
            Time(first + i, seconds[i]);
            if (
                (
                    BitConverter.DoubleToUInt64Bits(telling[i]) * 0x9E3779B97F4A7C15 >> 40
                    & AnchorMask
                ) == 0
            )
            {
                Anchor(first + i, seconds[i], rowHash(i));
            }
        }
    }

    public void Complete()
    {
        EndRepeat();
        EndOdd(_last, long.MaxValue);
    }

    private void Time(long row, double seconds)
    {
        var step = seconds - _last;
        if (step > GapPeriods * periodSeconds)
        {
            found.Add(
                new(
                    LogObservationKind.Gap,
                    null,
                    row,
                    row + 1,
                    _last,
                    seconds,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"No samples for {step:0.###} s between data rows {row} and {row + 1}, {step / periodSeconds:0} sample periods."
                    )
                )
            );
            _inBlock = 0;
        }

        if (_inBlock == 0)
        {
            _blockStart = seconds;
        }
        else if (_inBlock == RateBlock)
        {
            Block(row, seconds, (seconds - _blockStart) / RateBlock);
            (_inBlock, _blockStart) = (0, seconds);
        }

        _inBlock++;
        _last = seconds;
    }

    private void Block(long row, double seconds, double period)
    {
        if (Math.Abs(period - periodSeconds) <= RateTolerance * periodSeconds)
        {
            EndOdd(seconds, row);
            return;
        }

        if (_oddBlocks++ == 0)
        {
            _oddStart = (row - RateBlock, _blockStart);
        }

        _isOdd |= _oddBlocks >= BlocksUntilChange;
    }

    private void EndOdd(double seconds, long row)
    {
        if (_isOdd)
        {
            var to =
                row == long.MaxValue
                    ? "the end"
                    : string.Create(CultureInfo.InvariantCulture, $"data row {row + 1}");
            found.Add(
                new(
                    LogObservationKind.RateChange,
                    null,
                    _oddStart.Row + 1,
                    row == long.MaxValue
                        ? _oddStart.Row + 1 + ((long)_oddBlocks * RateBlock)
                        : row + 1,
                    _oddStart.Seconds,
                    seconds,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"From data row {_oddStart.Row + 1} to {to} the sample period is not the {periodSeconds * 1000:0.###} ms of the rest."
                    )
                )
            );
        }

        (_isOdd, _oddBlocks) = (false, 0);
    }

    private void Anchor(long row, double seconds, ulong hash)
    {
        if (_anchors.TryGetValue(hash, out var before) && row - before > RepeatsUntilSure)
        {
            if (_repeats == 0 || row - before != _offset)
            {
                EndRepeat();
                (_offset, _repeatStart) = (row - before, (row, seconds));
            }

            _repeats++;
            _repeatEnd = (row, seconds);
        }
        else
        {
            EndRepeat();
            _anchors[hash] = row;
        }
    }

    private void EndRepeat()
    {
        if (_repeats >= RepeatsUntilSure)
        {
            found.Add(
                new(
                    LogObservationKind.Repeated,
                    null,
                    _repeatStart.Row + 1,
                    _repeatEnd.Row + 1,
                    _repeatStart.Seconds,
                    _repeatEnd.Seconds,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Data rows {_repeatStart.Row + 1} to {_repeatEnd.Row + 1}, or some more, hold the same values as those {_offset} rows before, with other time stamps."
                    )
                )
            );
        }

        _repeats = 0;
    }
}
