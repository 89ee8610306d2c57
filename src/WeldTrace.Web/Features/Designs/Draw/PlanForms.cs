using System.Globalization;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Web.Features.Designs.Draw;

/// <summary>One row of the test plan as typed.</summary>
public sealed class ExaminationForm
{
    public string? Joint { get; set; }

    public PlannedExamination Method { get; set; }

    public string? Extent { get; set; }

    public string? MethodStandard { get; set; }

    public string? AcceptanceStandard { get; set; }

    public string? Level { get; set; }

    /// <summary>Method in whose place it is done; empty for none.</summary>
    public string? Replaces { get; set; }

    public string? Clause { get; set; }

    public bool IsEmpty =>
        string.IsNullOrWhiteSpace(Extent) && string.IsNullOrWhiteSpace(MethodStandard);

    internal static ExaminationForm Of(PlannedMethod planned) =>
        new()
        {
            Joint = planned.JointCode,
            Method = planned.Method,
            Extent = planned.ExtentPercent.ToString(CultureInfo.InvariantCulture),
            MethodStandard = planned.MethodStandard,
            AcceptanceStandard = planned.AcceptanceStandard,
            Level = planned.Level,
            Replaces = planned.Replaces?.ToString(),
            Clause = planned.Clause,
        };
}

/// <summary>What proof and burst follow from, as typed.</summary>
public sealed class BasisForm
{
    public LadderRule Rule { get; set; }

    public string? ProofFactor { get; set; }

    public string? BurstFactor { get; set; }

    /// <summary>PS in bar.</summary>
    public string? LargestAllowable { get; set; }

    public string? StrengthAtTest { get; set; }

    public string? StrengthInService { get; set; }

    public string? PermanentExpansion { get; set; }

    public string? Yield { get; set; }

    public string? Ultimate { get; set; }

    public string? Hardening { get; set; }

    public string? WeldFactor { get; set; }

    public string? WallSource { get; set; }

    public bool IsEmpty =>
        string.IsNullOrWhiteSpace(BurstFactor)
        && string.IsNullOrWhiteSpace(ProofFactor)
        && string.IsNullOrWhiteSpace(LargestAllowable);

    internal static BasisForm Of(PressurePlan plan) =>
        plan.Basis is not { } basis
            ? new()
            : new()
            {
                Rule = basis.Rule,
                ProofFactor = Text(basis.ProofFactor),
                BurstFactor = Text(basis.BurstFactor),
                LargestAllowable = basis.LargestAllowable is { } ps
                    ? DrawDesignForm.Text(ps.Bar)
                    : null,
                StrengthAtTest = DrawDesignForm.Text(basis.StrengthAtTest.Megapascals),
                StrengthInService = DrawDesignForm.Text(basis.StrengthInService.Megapascals),
                PermanentExpansion = Text(basis.PermanentExpansionPercent),
                Yield = basis.Wall is { } wall ? DrawDesignForm.Text(wall.Yield.Megapascals) : null,
                Ultimate = basis.Wall is { } strong
                    ? DrawDesignForm.Text(strong.Ultimate.Megapascals)
                    : null,
                Hardening = Text(basis.Wall?.HardeningExponent),
                WeldFactor = Text(basis.Wall?.WeldFactor),
                WallSource = basis.Wall?.Source,
            };

    private static string? Text(decimal? value) => value?.ToString(CultureInfo.InvariantCulture);
}
