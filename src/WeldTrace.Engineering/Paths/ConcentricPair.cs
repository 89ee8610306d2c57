using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Paths;

/// <summary>Which kinds of sides two neighbouring passes turn to each other.</summary>
public enum FacingSides
{
    /// <summary>Both turn their advancing side to the other.</summary>
    BothAdvancing,

    /// <summary>Both turn their retreating side to the other.</summary>
    BothRetreating,

    /// <summary>One turns its advancing, the other its retreating side.</summary>
    Unlike,
}

/// <summary>
/// Two circular passes about one centre. Gap of the tracks <c>g = (R2 − R1) − (d1 + d2)/2</c>, negative when they overlap;
/// the inner pass shows its outer edge to the outer pass, the outer pass its inner edge.
/// </summary>
public sealed record ConcentricPair : IWorked
{
    private ConcentricPair(CircularPassLayout inner, CircularPassLayout outer)
    {
        (Inner, Outer) = (inner, outer);
        InnerPassShows = inner.SideAt(CircleEdge.Outer);
        OuterPassShows = outer.SideAt(CircleEdge.Inner);
        Facing = (InnerPassShows, OuterPassShows) switch
        {
            (WeldSide.Advancing, WeldSide.Advancing) => FacingSides.BothAdvancing,
            (WeldSide.Retreating, WeldSide.Retreating) => FacingSides.BothRetreating,
            _ => FacingSides.Unlike,
        };
        PinTrackGap = Gap(inner.Pass.PinDiameter, outer.Pass.PinDiameter);
        ShoulderTrackGap = Gap(inner.Pass.ShoulderDiameter, outer.Pass.ShoulderDiameter);
        Working = Show();
    }

    /// <summary>The pass on the smaller radius.</summary>
    public CircularPassLayout Inner { get; }

    /// <summary>The pass on the larger radius.</summary>
    public CircularPassLayout Outer { get; }

    /// <summary>The side that the inner pass turns to the outer one.</summary>
    public WeldSide InnerPassShows { get; }

    /// <summary>The side that the outer pass turns to the inner one.</summary>
    public WeldSide OuterPassShows { get; }

    /// <summary>Both sides in one word.</summary>
    public FacingSides Facing { get; }

    /// <summary>Ligament between the pin tracks; negative when they overlap.</summary>
    public Length PinTrackGap { get; }

    /// <summary>Distance between the shoulder tracks; negative when they overlap.</summary>
    public Length ShoulderTrackGap { get; }

    /// <summary>What this means for hooks in the ligament, in words. Common practice, no source.</summary>
    public string Statement => $"{SidesSentence()} {GapSentence()} Sections of test pieces decide.";

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Compares two passes about one centre; refused when a pass cannot be laid out or the radii are not in order.</summary>
    public static Computed<ConcentricPair> Compare(CircularPass inner, CircularPass outer)
    {
        var (first, second) = (
            CircularPassLayout.Compute(inner),
            CircularPassLayout.Compute(outer)
        );
        var refusals = first.Refusals.Concat(second.Refusals).ToList();
        if (refusals.Count == 0 && outer.TrackRadius <= inner.TrackRadius)
        {
            refusals.Add(
                new(
                    RefusalReason.OutOfRange,
                    "track radius",
                    "The outer pass does not lie on a larger radius than the inner pass.",
                    "Give the pass with the smaller radius as the inner one."
                )
            );
        }

        return InputCheck
            .From(refusals)
            .Compute(() => new ConcentricPair(first.Value, second.Value));
    }

    private Length Gap(Length innerDiameter, Length outerDiameter) =>
        Outer.Pass.TrackRadius - Inner.Pass.TrackRadius - ((innerDiameter + outerDiameter) / 2);

    private string SidesSentence() =>
        Facing switch
        {
            FacingSides.BothAdvancing =>
                "Both passes turn their advancing side to the ligament between them, where hooks are usually sharper: two hooks can point at each other.",
            FacingSides.BothRetreating =>
                "Both passes turn their retreating side to the ligament between them, where hooks usually run flatter; the advancing sides lie at the outer rims of the pair.",
            _ =>
                "One pass turns its advancing, the other its retreating side to the ligament between them: one hook of each kind.",
        };

    private string GapSentence() =>
        PinTrackGap.Metres < 0
            ? "The pin tracks overlap: the second pass stirs the edge of the first again."
            : $"The ligament between the pin tracks is {Figures.Format(PinTrackGap.Millimetres, 4)} mm wide.";

    private Working Show() =>
        Working
            .Of("Two concentric passes", "g = (R2 − R1) − (d1 + d2)/2, negative = overlap")
            .Input("R1", "track radius of the inner pass", Inner.Pass.TrackRadius.Millimetres, "mm")
            .Input("R2", "track radius of the outer pass", Outer.Pass.TrackRadius.Millimetres, "mm")
            .Input("", "pin diameter, inner pass", Inner.Pass.PinDiameter.Millimetres, "mm")
            .Input("", "pin diameter, outer pass", Outer.Pass.PinDiameter.Millimetres, "mm")
            .Input(
                "",
                "shoulder diameter, inner pass",
                Inner.Pass.ShoulderDiameter.Millimetres,
                "mm"
            )
            .Input(
                "",
                "shoulder diameter, outer pass",
                Outer.Pass.ShoulderDiameter.Millimetres,
                "mm"
            )
            .Result("g_pin", "gap of the pin tracks", PinTrackGap.Millimetres, "mm")
            .Result("g_shoulder", "gap of the shoulder tracks", ShoulderTrackGap.Millimetres, "mm")
            .From("Plane geometry. The remark on hooks is common practice, no source.")
            .Build();
}
