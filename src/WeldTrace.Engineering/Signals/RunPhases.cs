namespace WeldTrace.Engineering.Signals;

/// <summary>The phases of a whole logged run.</summary>
public sealed class RunPhases
{
    private readonly List<PhaseSpan> _spans = [];
    private LogPoint _from;

    internal RunPhases(IReadOnlyList<ToolPass> passes, LogPoint first, LogPoint end)
    {
        Passes = passes;
        _from = first;
        foreach (var pass in passes)
        {
            Divide(pass, pass.ToolFree ?? end);
        }

        Close(WeldPhase.Idle, end);
    }

    /// <summary>The phases of a run with one stay in the work whose bounds a person states.</summary>
    /// <param name="pass">The stay.</param>
    /// <param name="first">First sample of the log.</param>
    /// <param name="end">The sample count and the last time stamp.</param>
    public static RunPhases Stated(ToolPass pass, LogPoint first, LogPoint end) =>
        new([pass], first, end);

    /// <summary>
    /// Stays of the tool in the work in which it travelled, in order of time; when there is none, the last stay
    /// without travel, if any.
    /// </summary>
    public IReadOnlyList<ToolPass> Passes { get; }

    /// <summary>The phases in order of time; each sample is in exactly one.</summary>
    public IReadOnlyList<PhaseSpan> Spans => _spans;

    /// <summary>Whether the tool travelled in the work at all.</summary>
    public bool HasTraverse => Passes is [{ HasTraverse: true }, ..];

    private void Divide(ToolPass pass, LogPoint free)
    {
        Close(WeldPhase.Idle, pass.Contact);
        Close(WeldPhase.Plunge, pass.DwellStart ?? pass.TraverseStart ?? pass.RetractStart ?? free);
        Close(WeldPhase.Dwell, pass.TraverseStart ?? pass.RetractStart ?? free);
        Close(WeldPhase.Traverse, pass.HasTraverse ? pass.ExitStart ?? free : _from);
        Close(WeldPhase.Exit, free);
    }

    private void Close(WeldPhase phase, LogPoint next)
    {
        if (next.Index > _from.Index)
        {
            _spans.Add(new PhaseSpan(phase, _from, next));
            _from = next;
        }
    }
}
