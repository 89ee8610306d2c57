using System.Numerics;
using System.Runtime.InteropServices;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Mechanical energy of the spindle: integral of 2 pi n M over time.</summary>
internal sealed class SpindleEnergyMeter(LogHeader header)
{
    private readonly LogColumn? _speed = RunChannels.Find(header, LogChannel.SpindleSpeed);
    private readonly LogColumn? _torque = RunChannels.Find(header, LogChannel.Torque);
    private readonly double[] _joulesOfPhases = new double[Enum.GetValues<TradePhase>().Length];
    private TrapezoidIntegral _joules;
    private double _steadyJoules;
    private SteadyTime? _steady;
    private double[] _watts = [];
    private double[] _newtonMetres = [];

    public Energy? Total =>
        _speed is null || _torque is null ? null : Energy.FromJoules(_steadyJoules);

    /// <summary>Energy of a phase; none without torque and spindle speed.</summary>
    public Energy? Of(TradePhase phase) =>
        _speed is null || _torque is null ? null : Energy.FromJoules(_joulesOfPhases[(int)phase]);

    /// <summary>Takes the samples of a frame; in all only its steady pieces count.</summary>
    public void Add(
        LogFrames frames,
        ReadOnlySpan<double> seconds,
        IReadOnlyList<FramePiece> pieces
    )
    {
        if (_speed is null || _torque is null)
        {
            return;
        }

        var watts = Watts(frames);
        foreach (var piece in pieces)
        {
            if (piece.Trade is null || piece.Steady != _steady)
            {
                _joules.Interrupt();
                _steady = piece.Steady;
            }

            if (piece.Trade is not { } phase)
            {
                continue;
            }

            var (rows, before) = (piece.From..piece.To, _joules.Total);
            // The torques are done with: their room takes the sums.
            _joules.Add(seconds[rows], watts[rows], _newtonMetres);
            _joulesOfPhases[(int)phase] += _joules.Total - before;
            _steadyJoules += piece.Steady is null ? 0 : _joules.Total - before;
        }
    }

    private ReadOnlySpan<double> Watts(LogFrames frames)
    {
        var watts = frames.NearlySi(_speed!, ref _watts);
        ReadOnlySpan<double> torques = frames.NearlySi(_torque!, ref _newtonMetres);
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(watts);
        var others = MemoryMarshal.Cast<double, Vector<double>>(torques);
        for (var i = 0; i < vectors.Length; i++)
        {
            vectors[i] = Vector.Abs(vectors[i] * others[i]) * (2 * Math.PI);
        }

        for (var i = vectors.Length * Vector<double>.Count; i < watts.Length; i++)
        {
            watts[i] = Math.Abs(watts[i] * torques[i]) * (2 * Math.PI);
        }

        return watts;
    }
}
