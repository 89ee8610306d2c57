using System.Globalization;
using System.Numerics;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Looks for gaps and changes of the sample period, and for rows that come again.</summary>
internal sealed class RowObserver(double periodSeconds, long rows, ObservationList found)
{
    private const double GapPeriods = 5;
    private const double RateTolerance = 0.2;
    private const int RateBlock = 64;
    private const int BlocksUntilChange = 3;
    private const long ManyRows = 500_000;
    private const uint Spread = 0x9E3779B1;
    private const int RepeatsUntilSure = 3;

    private readonly Dictionary<ulong, long> _anchors = [];

    // One row in 32 is remembered, of a long log one in 128: what comes again there is longer too.
    private readonly int _anchorShift = 32 - (rows > ManyRows ? 7 : 5);
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
    /// <param name="telling">The samples of the channel that changes most, as whole numbers of any kind; rows are known again by it.</param>
    /// <param name="rowHash">A hash of all channels but time of one of these rows.</param>
    public void Add(
        long first,
        ReadOnlySpan<double> seconds,
        ReadOnlySpan<uint> telling,
        Func<int, ulong> rowHash
    )
    {
        Times(first, seconds);
        for (var i = NextAnchor(telling, 0); i < seconds.Length; i = NextAnchor(telling, i + 1))
        {
            Anchor(first + i, seconds[i], rowHash(i));
        }
    }

    public void Complete()
    {
        EndRepeat();
        EndOdd(_last, long.MaxValue);
    }

    /// <summary>The next row that is remembered: its number alone decides, so that it is chosen again when it comes again.</summary>
    private int NextAnchor(ReadOnlySpan<uint> numbers, int from)
    {
        var factor = new Vector<uint>(Spread);
        for (; from <= numbers.Length - Vector<uint>.Count; from += Vector<uint>.Count)
        {
            var vector = new Vector<uint>(numbers[from..]) * factor;
            if (Vector.EqualsAny(vector >> _anchorShift, Vector<uint>.Zero))
            {
                break;
            }
        }

        while (from < numbers.Length && unchecked(numbers[from] * Spread) >> _anchorShift != 0)
        {
            from++;
        }

        return from;
    }

    private void Times(long first, ReadOnlySpan<double> seconds)
    {
        for (var i = 0; i < seconds.Length; )
        {
            var even = double.IsNaN(_last) ? 0 : EvenBlock(seconds[i..]);
            if (even > 0)
            {
                (_inBlock, _last) = (_inBlock + even, seconds[i + even - 1]);
                i += even;
            }
            else
            {
                Time(first + i, seconds[i++]);
            }
        }
    }

    /// <summary>Leading samples before the end of the block under way, when there is no gap before any of them.</summary>
    private int EvenBlock(ReadOnlySpan<double> seconds)
    {
        var count = Math.Min(RateBlock - _inBlock, seconds.Length);
        if (_inBlock == 0 || count <= 0 || seconds[0] - _last > GapPeriods * periodSeconds)
        {
            return 0;
        }

        var longest = new Vector<double>(GapPeriods * periodSeconds);
        var i = 1;
        for (; i <= count - Vector<double>.Count; i += Vector<double>.Count)
        {
            var steps = new Vector<double>(seconds[i..]) - new Vector<double>(seconds[(i - 1)..]);
            if (Vector.GreaterThanAny(steps, longest))
            {
                break;
            }
        }

        return i;
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
