using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Desk.LeakPlanning;

/// <summary>What a pressure-decay test can see, how long it must hold, and what a leak means in other units, gases and pressures.</summary>
public sealed class LeakSubject : IDeskSubject
{
    private static readonly IReadOnlyList<FieldOption> Gases =
    [
        .. TestGas.All.Select(g => new FieldOption(g.Name, g.Name)),
    ];

    public string Path => Routes.DeskLeak;

    public string Title => "Leak test planning";

    public string Purpose =>
        "The smallest leak that a pressure-decay test sees, the hold that a wanted sensitivity needs, and the same leak in other units, with another gas and at another pressure.";

    public IReadOnlyList<DeskGroup> Groups { get; } =
    [
        new(
            "Leak that must be seen",
            new DeskField("rate", "Leak rate", "0.01")
            {
                Called = ["wanted leak rate"],
                Hint = "A power of ten may be written as 1e-4.",
            },
            DeskField.Choice(
                "rateunit",
                "Unit of the leak rate",
                "Pa·m³/s",
                [
                    .. UnitCatalogue
                        .Of(Dimension.LeakRate)
                        .Select(u => new FieldOption(u.Symbol, u.Symbol)),
                ]
            )
        ),
        new(
            "Test",
            DeskField.Of<Volume>("volume", "Test volume with hoses", "10") with
            {
                Called = ["test volume"],
            },
            DeskField.Of<Pressure>("gauge", "Test pressure, gauge", "60") with
            {
                Called = ["absolute pressure", "test pressure inside"],
            },
            DeskField.Of<Pressure>("air", "Air pressure", "1.01325") with
            {
                Called = ["test pressure outside"],
            },
            DeskField.Of<Temperature>("temperature", "Gas temperature", "20") with
            {
                Called = ["gas temperature"],
            },
            new DeskField("hold", "Planned hold", "60")
            {
                FixedUnit = "min",
                Called = ["hold time"],
            },
            DeskField.Choice("gas", "Test gas", TestGas.Nitrogen.Name, Gases)
        ),
        new(
            "Standard uncertainties, coverage factor 1",
            DeskField.Of<Pressure>(
                "upressure",
                "Uncertainty of one pressure reading",
                "2",
                UnitScale.Fine
            ) with
            {
                Called = ["uncertainty of the pressure"],
            },
            new DeskField("ukelvin", "Uncertainty of one gas temperature", "0.02")
            {
                FixedUnit = "K",
                Called = ["uncertainty of the temperature"],
            }
        ),
        new(
            "In service",
            DeskField.Choice("servicegas", "Gas in service", TestGas.Nitrogen.Name, Gases),
            DeskField.Of<Pressure>(
                "serviceinside",
                "Pressure inside in service, absolute",
                "61"
            ) with
            {
                Called = ["service pressure inside"],
            },
            DeskField.Of<Pressure>(
                "serviceoutside",
                "Pressure outside in service, absolute",
                "1"
            ) with
            {
                Called = ["service pressure outside"],
            }
        ),
    ];

    public Calculation? Calculate(DeskEntries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var plan = LeakPlan.Read(entries);
        if (
            !entries.AreClean
            || !entries.Take(
                DecaySensitivity.Compute(
                    plan.Volume,
                    plan.Absolute,
                    plan.Gas,
                    plan.Hold,
                    plan.Uncertainty
                ),
                out var sensitivity
            )
        )
        {
            return null;
        }

        var isComputed =
            entries.Take(sensitivity.PlanHold(plan.Wanted), out var hold)
            & entries.Take(
                LeakConversion.Compute(plan.Wanted, plan.InTest, plan.InService),
                out var service
            );
        return !isComputed
            ? null
            : new Calculation
            {
                Title = Title,
                Figures = [.. LeakFigures.Of(plan, sensitivity, hold)],
                Statements = [.. LeakFigures.Statements(plan, sensitivity, hold)],
                Plot = new CalculationPlot(
                    "Detection limit against hold",
                    DetectionPlot.Of(sensitivity, plan.Hold, plan.Wanted, plan.Unit),
                    "Line: smallest leak that is seen with 95 % probability. Disc: planned hold. Dashed: leak that must be seen."
                ),
                Tables = [LeakFigures.InUnits(plan), LeakFigures.InService(plan, service!)],
                Cautions = [DeskCautions.Pressure, DeskCautions.Decides],
            };
    }
}
