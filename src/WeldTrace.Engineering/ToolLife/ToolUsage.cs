using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.ToolLife;

/// <summary>Metres charged to a tool against its life limit. Sum and difference; no source needed.</summary>
public sealed record ToolUsage : IWorked
{
    private ToolUsage(Length used, Length lifeLimit, Length nextPass)
    {
        (Used, LifeLimit, NextPass) = (used, lifeLimit, nextPass);
        Left = lifeLimit - used;
        PassesLeft =
            Left.Metres <= 0 ? 0 : (int)Math.Min(Math.Floor(Left / nextPass), int.MaxValue);
        Working = Working
            .Of("Tool life used and left", "left = limit − Σ runs; passes = ⌊left / L⌋")
            .Input("limit", "life limit", lifeLimit.Metres, "m")
            .Input("Σ runs", "metres charged", used.Metres, "m")
            .Input("L", "path length of the next pass", nextPass.Metres, "m")
            .Result("left", "metres left", Left.Metres, "m")
            .Result("passes", "whole passes left", PassesLeft)
            .From("Sum of the paths travelled, aborted runs with what they travelled.")
            .Build();
    }

    /// <summary>Metres charged so far.</summary>
    public Length Used { get; }

    /// <summary>Life limit of the tool.</summary>
    public Length LifeLimit { get; }

    /// <summary>Path length of the pass that comes next.</summary>
    public Length NextPass { get; }

    /// <summary>Metres left; negative when the limit is exceeded.</summary>
    public Length Left { get; }

    /// <summary>Whole passes of that length that fit into what is left.</summary>
    public int PassesLeft { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Adds up the runs of a tool.</summary>
    /// <param name="runs">Path travelled in each run, zero or more.</param>
    /// <param name="lifeLimit">Life limit, above zero.</param>
    /// <param name="nextPass">Path length of the next pass, above zero.</param>
    public static Computed<ToolUsage> Compute(
        IEnumerable<Length> runs,
        Length lifeLimit,
        Length nextPass
    )
    {
        ArgumentNullException.ThrowIfNull(runs);
        var lengths = runs.ToList();
        var check = new InputCheck()
            .Positive("life limit", lifeLimit.Metres, "m")
            .Positive("path length of the next pass", nextPass.Metres, "m")
            .NotNegative(
                "shortest run",
                lengths.Select(run => run.Metres).DefaultIfEmpty(0).Min(),
                "m"
            )
            .NotNegative(
                "longest run",
                lengths.Select(run => run.Metres).DefaultIfEmpty(0).Max(),
                "m"
            );
        if (!check.IsClean)
        {
            return check.Refused<ToolUsage>();
        }

        var used = Length.FromMetres(lengths.Sum(run => run.Metres));
        return Computed.Of(new ToolUsage(used, lifeLimit, nextPass));
    }
}
