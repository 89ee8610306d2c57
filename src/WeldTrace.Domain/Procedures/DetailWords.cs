namespace WeldTrace.Domain.Procedures;

/// <summary>Words for the choices that a procedure makes.</summary>
public static class DetailWords
{
    /// <summary>The word for a penetration.</summary>
    public static string Of(Penetration penetration) =>
        penetration == Penetration.Full ? "full" : "partial";

    /// <summary>The words for a condition after welding.</summary>
    public static string Of(PostWeldCondition condition) =>
        condition switch
        {
            PostWeldCondition.AsWelded => "as welded",
            PostWeldCondition.NaturalAgeing => "natural ageing",
            PostWeldCondition.ArtificialAgeing => "artificial ageing",
            PostWeldCondition.Other => "other heat treatment",
            _ => throw new ArgumentOutOfRangeException(
                nameof(condition),
                condition,
                "Unknown condition."
            ),
        };
}
