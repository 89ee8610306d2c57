namespace WeldTrace.Domain.Welding;

/// <summary>What is verified before welding (ISO 25239-5:2020 4.12.2).</summary>
public enum PreWeldItem
{
    /// <summary>The operator's certificate suits the weld and is valid.</summary>
    OperatorCertificate,

    /// <summary>The procedure specification.</summary>
    Procedure,

    /// <summary>Alloy and temper of the parent material.</summary>
    ParentMaterial,

    /// <summary>Preparation of the joint: edges and cleaning.</summary>
    JointPreparation,

    /// <summary>Fit-up, jigging and tacking.</summary>
    FitUp,

    /// <summary>The machine is set to the procedure's parameters.</summary>
    Parameters,

    /// <summary>Preheat and interpass temperature.</summary>
    Preheat,
}

/// <summary>One of the seven checks before welding, answered by records or by the welder.</summary>
/// <param name="Item">What is verified.</param>
/// <param name="RuleId">Floor rule whose records answer it; null when the welder confirms it.</param>
/// <param name="Text">What the records say, or the statement that the welder confirms.</param>
public sealed record PreWeldCheck(PreWeldItem Item, string? RuleId, string Text)
{
    /// <summary>Whether the welder must confirm it.</summary>
    public bool NeedsWelder => RuleId is null;

    /// <summary>What is verified, in words.</summary>
    public string Title =>
        Item switch
        {
            PreWeldItem.OperatorCertificate => "Operator's certificate",
            PreWeldItem.Procedure => "Procedure",
            PreWeldItem.ParentMaterial => "Parent material and temper",
            PreWeldItem.JointPreparation => "Joint preparation",
            PreWeldItem.FitUp => "Fit-up, jigging and tacking",
            PreWeldItem.Parameters => "Parameters set as in the procedure",
            PreWeldItem.Preheat => "Preheat and interpass temperature",
            _ => throw new InvalidOperationException($"Unknown check {Item}."),
        };
}
