using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

// Where the run was when.
public sealed partial class WeldRun
{
    /// <summary>Phase word of the welding itself.</summary>
    public const string TraversePhase = "traverse";

    /// <summary>When the tool passed a place, in seconds of the log's own time, taking the travel as uniform; null when it did not, or there is no log.</summary>
    /// <param name="angle">Angle along the travel from the start of the pass.</param>
    public double? SecondsAt(Angle angle)
    {
        var traverse = Log?.Phases.FirstOrDefault(p => p.Phase == TraversePhase);
        if (traverse is null || Travelled is not { } travelled || travelled <= Length.Zero)
        {
            return null;
        }

        var part = TrackRadius.Metres * angle.Radians / travelled.Metres;
        return part is >= 0 and <= 1
            ? traverse.StartSeconds + (part * (traverse.EndSeconds - traverse.StartSeconds))
            : null;
    }
}
