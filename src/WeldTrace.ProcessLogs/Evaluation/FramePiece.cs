using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Samples of a frame that are in one phase, and either all or none of them in the same steady stretch.</summary>
/// <param name="From">First sample, from 0 in the frame.</param>
/// <param name="To">First sample after it.</param>
/// <param name="Phase">The phase.</param>
/// <param name="Steady">The steady stretch, if any.</param>
/// <param name="IsOverlap">Whether the seam was welded once round before.</param>
internal readonly record struct FramePiece(
    int From,
    int To,
    WeldPhase Phase,
    SteadyTime? Steady,
    bool IsOverlap = false
)
{
    /// <summary>The phase as the trade names it; none while the tool is not in the work.</summary>
    public TradePhase? Trade =>
        Phase switch
        {
            WeldPhase.Idle => null,
            WeldPhase.Plunge => TradePhase.Plunge,
            WeldPhase.Dwell => TradePhase.Dwell,
            WeldPhase.Exit => TradePhase.Exit,
            _ when IsOverlap => TradePhase.Overlap,
            _ => Steady is null ? TradePhase.Ramp : TradePhase.Traverse,
        };

    /// <summary>Tells what lies from a sample of the frame on as overlap.</summary>
    public static void MarkOverlap(List<FramePiece> pieces, int fromRow)
    {
        for (var i = 0; i < pieces.Count; i++)
        {
            var piece = pieces[i];
            if (piece.To <= fromRow)
            {
                continue;
            }

            if (piece.From < fromRow)
            {
                pieces.Insert(i, piece with { To = fromRow });
                i++;
            }

            pieces[i] = piece with { From = Math.Max(piece.From, fromRow), IsOverlap = true };
        }
    }

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
