using WeldTrace.Engineering.Quantities;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>How long each phase lasted and how far the tool went in it.</summary>
internal sealed class PhaseLengths
{
    private readonly double[] _seconds = new double[Enum.GetValues<TradePhase>().Length];
    private readonly double[] _metres = new double[Enum.GetValues<TradePhase>().Length];

    private double _lastSeconds = double.NaN;
    private double _lastMetres;

    /// <summary>Takes the next piece; it counts from the last sample before it.</summary>
    public void Add(FramePiece piece, ReadOnlySpan<double> seconds, ReadOnlySpan<double> metres)
    {
        var (end, length) = (seconds[piece.To - 1], metres[piece.To - 1]);
        if (piece.Trade is { } phase && !double.IsNaN(_lastSeconds))
        {
            _seconds[(int)phase] += end - _lastSeconds;
            _metres[(int)phase] += length - _lastMetres;
        }

        (_lastSeconds, _lastMetres) = (end, length);
    }

    public double SecondsOf(TradePhase phase) => _seconds[(int)phase];

    public Length PathOf(TradePhase phase) => Length.FromMetres(_metres[(int)phase]);
}
