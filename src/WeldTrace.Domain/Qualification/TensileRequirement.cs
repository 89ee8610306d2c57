using System.Globalization;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Qualification;

/// <summary>What the engineer knows about the parents' strength.</summary>
/// <param name="Minimum">Least tensile strength of the parent in the temper that the table names, in MPa.</param>
/// <param name="MinimumSource">Material standard behind it.</param>
/// <param name="OtherMinimum">The same for the other side of a joint between two materials.</param>
/// <param name="OtherMinimumSource">Material standard behind that.</param>
/// <param name="DesignValue">Least strength that the design specification asks of the joint, in MPa.</param>
/// <param name="DesignDocument">The design specification with its clause.</param>
public sealed record TensileBasis(
    Measured? Minimum,
    string? MinimumSource,
    Measured? OtherMinimum,
    string? OtherMinimumSource,
    Measured? DesignValue,
    string? DesignDocument
)
{
    /// <summary>Longest source or document.</summary>
    public const int LongestText = 160;
}

/// <summary>Least tensile strength of a specimen, with how it was found.</summary>
/// <param name="Megapascals">Least strength, in MPa.</param>
/// <param name="Derivation">How it follows, in one sentence.</param>
public sealed record TensileRequirement(decimal Megapascals, string Derivation)
{
    /// <summary>Factor of the table; null when the design specification gives the value.</summary>
    public decimal? Factor { get; init; }

    /// <summary>Minimum of the parent that the factor is taken of, in MPa; null without a factor.</summary>
    public decimal? ParentMinimum { get; init; }

    /// <summary>The temper for whose minimum a parent's strength is to be entered; null when the table has no factor.</summary>
    public static string? TemperOfMinimum(TensileFactor? factor, string temper) =>
        factor is null ? null
        : factor.BaseTemper == "actual" ? temper
        : factor.BaseTemper;

    /// <summary>
    /// The requirement: factor × minimum of each side, the lower of the two governing (EN 14532-3:2004, 6.2.4.1), and never less than a
    /// value of the design specification. Without a factor the design specification must give the value (table 2, notes b and e).
    /// </summary>
    public static Outcome<TensileRequirement> Of(
        ProcedureContent content,
        TensileBasis basis,
        LimitTable groups,
        LimitTable factors
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(basis);
        var checks = new Checks();
        CheckDesign(checks, basis);
        List<TensileRequirement> sides = [];
        AddSide(
            checks,
            sides,
            new Side(content.Alloy, content.Temper, basis.Minimum, basis.MinimumSource, "Minimum"),
            content,
            basis,
            groups,
            factors
        );
        if (content.DetailsOrNone.Other is { } other)
        {
            AddSide(
                checks,
                sides,
                new Side(
                    other.Alloy,
                    other.Temper,
                    basis.OtherMinimum,
                    basis.OtherMinimumSource,
                    "OtherMinimum"
                ),
                content,
                basis,
                groups,
                factors
            );
        }

        return checks.AllHold ? Governing(sides, basis) : checks.Refusals;
    }

    /// <summary>The factor for one side; null when the table has none.</summary>
    public static TensileFactor? FactorFor(
        ProcedureContent content,
        string alloy,
        string temper,
        LimitTable groups,
        LimitTable factors
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        return TensileFactors.Find(
            factors,
            MaterialGroups.Of(groups, alloy),
            temper,
            content.DetailsOrNone.PostWeld ?? PostWeldCondition.AsWelded
        );
    }

    private static void CheckDesign(Checks checks, TensileBasis basis)
    {
        if (basis.DesignValue is { } value)
        {
            checks
                .That(
                    value.InUnit() > 0,
                    "design-value",
                    "Give the design value above zero.",
                    nameof(basis.DesignValue)
                )
                .Text(
                    basis.DesignDocument,
                    TensileBasis.LongestText,
                    "Name the design specification with its clause",
                    nameof(basis.DesignDocument)
                );
        }
    }

    private static void AddSide(
        Checks checks,
        List<TensileRequirement> sides,
        Side side,
        ProcedureContent content,
        TensileBasis basis,
        LimitTable groups,
        LimitTable factors
    )
    {
        var factor = FactorFor(content, side.Alloy, side.Temper, groups, factors);
        if (factor is null)
        {
            checks.That(
                basis.DesignValue is not null,
                "tensile-design",
                $"{factors.Label} has no factor for {side.Alloy}-{side.Temper}, {DetailWords.Of(content.DetailsOrNone.PostWeld ?? PostWeldCondition.AsWelded)}; enter the value of the design specification with its document, or correct the condition after welding in the procedure.",
                nameof(basis.DesignValue),
                factors.Text.Source.ToString()
            );
            return;
        }

        var temper = TemperOfMinimum(factor, side.Temper);
        checks
            .That(
                side.Minimum?.InUnit() > 0,
                "minimum",
                $"Give the least tensile strength of {side.Alloy} in temper {temper}, above zero.",
                side.Field
            )
            .Text(
                side.Source,
                TensileBasis.LongestText,
                $"Name the material standard behind the minimum of {side.Alloy}",
                side.Field + "Source"
            );
        if (side.Minimum is { } minimum)
        {
            var parent = decimal.Parse(minimum.Digits, CultureInfo.InvariantCulture);
            var least = factor.Factor * parent;
            sides.Add(
                new TensileRequirement(
                    least,
                    FormattableString.Invariant(
                        $"{factor.Factor} × {minimum} ({side.Alloy}-{temper}, {side.Source}) = {least} MPa, by {factors.Label}"
                    )
                )
                {
                    Factor = factor.Factor,
                    ParentMinimum = parent,
                }
            );
        }
    }

    private static TensileRequirement Governing(List<TensileRequirement> sides, TensileBasis basis)
    {
        var lower = sides.MinBy(s => s.Megapascals);
        if (basis.DesignValue is not { } design)
        {
            return lower!;
        }

        var value = decimal.Parse(design.Digits, CultureInfo.InvariantCulture);
        return lower is not null && lower.Megapascals >= value
            ? lower
            : new TensileRequirement(value, $"design specification {basis.DesignDocument}");
    }

    private sealed record Side(
        string Alloy,
        string Temper,
        Measured? Minimum,
        string? Source,
        string Field
    );
}
