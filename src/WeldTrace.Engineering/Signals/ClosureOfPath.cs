using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Signals;

/// <summary>
/// How two measures of one path close: <c>d = s_v − s_o</c>, <c>d/s_o</c>, of the travel speed integrated over time and of another channel.
/// Definition; no source needed.
/// </summary>
public sealed record ClosureOfPath : IWorked
{
    private ClosureOfPath(Length bySpeed, Length byOther)
    {
        Difference = bySpeed - byOther;
        Share = Finite.Require(Difference.Metres / byOther.Metres);
        Working = Working
            .Of("Closure of the path", "d = s_v − s_o; e = d/s_o")
            .Input("s_v", "path by the travel speed, ∫ v dt", bySpeed.Metres, "m")
            .Input("s_o", "path by the other channel", byOther.Metres, "m")
            .Result("d", "difference", Difference.Millimetres, "mm")
            .Result("e", "share of the path by the other channel", Share * 100, "%")
            .From("Definition; no source needed.")
            .Build();
    }

    /// <summary>By how much the path by the travel speed is longer.</summary>
    public Length Difference { get; }

    /// <summary>The difference as a share of the other path.</summary>
    public double Share { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Compares the two.</summary>
    /// <param name="bySpeed">Path by the travel speed, zero or above.</param>
    /// <param name="byOther">Path by another channel, above zero.</param>
    public static Computed<ClosureOfPath> Compute(Length bySpeed, Length byOther) =>
        new InputCheck()
            .NotNegative("path by the travel speed", bySpeed.Metres, "m")
            .Positive("path by the other channel", byOther.Metres, "m")
            .Compute(() => new ClosureOfPath(bySpeed, byOther));
}
