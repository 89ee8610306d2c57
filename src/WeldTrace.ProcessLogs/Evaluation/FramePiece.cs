using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Samples of a frame that are in one phase, and either all or none of them in the same steady stretch.</summary>
/// <param name="From">First sample, from 0 in the frame.</param>
/// <param name="To">First sample after it.</param>
/// <param name="Phase">The phase.</param>
/// <param name="Steady">The steady stretch, if any.</param>
internal readonly record struct FramePiece(int From, int To, WeldPhase Phase, SteadyTime? Steady)
{
    /// <summary>The pieces of a frame in order.</summary>
    public static void Divide(
        LogFrames frames,
        ReadOnlySpan<double> seconds,
        IReadOnlyList<PhaseSpan> spans,
        SteadyTime[] steady,
        List<FramePiece> pieces
    )
    {
        pieces.Clear();
        foreach (var span in spans)
        {
            var from = (int)Math.Clamp(span.First.Index - frames.First, 0, frames.Count);
            var to = (int)Math.Clamp(span.Next.Index - frames.First, 0, frames.Count);
            if (to > from)
            {
                Divide(new FramePiece(from, to, span.Phase, null), seconds, steady, pieces);
            }
        }
    }

    private static void Divide(
        FramePiece piece,
        ReadOnlySpan<double> seconds,
        SteadyTime[] steady,
        List<FramePiece> pieces
    )
    {
        foreach (var stretch in steady)
        {
            var (from, to) = stretch.In(seconds);
            (from, to) = (Math.Max(from, piece.From), Math.Min(to, piece.To));
            if (to <= from || piece.Phase == WeldPhase.Idle)
            {
                continue;
            }

            if (from > piece.From)
            {
                pieces.Add(piece with { To = from });
            }

            pieces.Add(piece with { From = from, To = to, Steady = stretch });
            piece = piece with { From = to };
        }

        if (piece.To > piece.From)
        {
            pieces.Add(piece);
        }
    }
}
