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
    private TrapezoidIntegral _joules;
    private double[] _watts = [];
    private double[] _newtonMetres = [];

    public Energy? Total =>
        _speed is null || _torque is null ? null : Energy.FromJoules(_joules.Total);

    /// <summary>Takes the samples of a frame; only its steady pieces count.</summary>
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
            if (piece.Steady is null)
            {
                _joules.Interrupt();
                continue;
            }

            var rows = piece.From..piece.To;
            // The torques are done with: their room takes the sums.
            _joules.Add(seconds[rows], watts[rows], _newtonMetres);
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
