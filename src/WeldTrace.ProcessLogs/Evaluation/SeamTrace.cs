using System.Numerics;
using System.Runtime.InteropServices;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Position along the seam of every sample: counted while the tool is in the work.</summary>
internal sealed class SeamTrace(RunChannels channels, SeamPosition? position)
{
    private double[] _metres = [];
    private double[] _travel = [];

    private readonly CoordinatePath _path = new();
    private double[] _across = [];

    public Length Travelled => position?.Travelled ?? Length.FromMetres(_path.TravelledMetres);

    public ReadOnlySpan<double> Follow(
        LogFrames frames,
        ReadOnlySpan<double> seconds,
        IReadOnlyList<FramePiece> pieces
    )
    {
        var metres = frames.Room(ref _metres);
        if (position is null)
        {
            FollowCoordinates(frames, metres, pieces);
            return metres;
        }

        var travel = Travel(frames);
        foreach (var piece in pieces)
        {
            var rows = piece.From..piece.To;
            if (Counts(piece.Phase))
            {
                position.Add(seconds[rows], travel[rows], metres[rows]);
            }
            else
            {
                position.Interrupt();
                metres[rows].Fill(position.Travelled.Metres);
            }
        }

        return metres;
    }

    private void FollowCoordinates(
        LogFrames frames,
        Span<double> metres,
        IReadOnlyList<FramePiece> pieces
    )
    {
        metres.Clear();
        if (channels is not { Travel: { } along, Across: { } across })
        {
            return;
        }

        var x = frames.Si(along, ref _travel);
        var y = frames.Si(across, ref _across);
        foreach (var piece in pieces)
        {
            for (var i = piece.From; i < piece.To; i++)
            {
                metres[i] = Counts(piece.Phase) ? _path.Add(x[i], y[i]) : _path.TravelledMetres;
            }

            if (!Counts(piece.Phase))
            {
                _path.Interrupt();
            }
        }
    }

    private ReadOnlySpan<double> Travel(LogFrames frames)
    {
        if (channels.Travel is not { } column)
        {
            return frames.Room(ref _travel);
        }

        var travel = frames.NearlySi(column, ref _travel);
        if (channels.Source == SeamPositionSource.TravelSpeed)
        {
            var vectors = MemoryMarshal.Cast<double, Vector<double>>(travel);
            foreach (ref var vector in vectors)
            {
                vector = Vector.Abs(vector);
            }

            foreach (ref var speed in travel[(vectors.Length * Vector<double>.Count)..])
            {
                speed = Math.Abs(speed);
            }
        }

        return travel;
    }

    private bool Counts(WeldPhase phase) =>
        channels.Source == SeamPositionSource.ProgrammedSpeed
            ? phase == WeldPhase.Traverse
            : phase != WeldPhase.Idle;
}
