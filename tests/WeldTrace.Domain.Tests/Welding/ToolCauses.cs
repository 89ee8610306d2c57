using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>F6, beyond the tool's state and life: its checks and inspections, every 10 m or 60 days by WI-30.</summary>
internal static class ToolCauses
{
    public static IReadOnlyList<GateCause> All { get; } =
    [
        new("F6", "tool in store", ["T-15-02 is in store", "must be in service"], InStore),
        new(
            "F6",
            "first-use check missing",
            ["no first-use check"],
            () => With(BeforeChecksWereKept)
        ),
        new(
            "F6",
            "wear inspection due by metres",
            ["due for its wear inspection after 0.300 m", "inspect it by WI-30"],
            () => With(design => Used(SampleTools.InService(design), 9.7, "NR4-0001"))
        ),
        new(
            "F6",
            "wear inspection due by days",
            ["was due by 2026-05-01", "inspect it by WI-30"],
            () =>
                With(design => SampleTools.InService(design)) with
                {
                    Today = new DateOnly(2026, 5, 2),
                }
        ),
        new(
            "F6",
            "tool not cleaned after another joint",
            ["last welded NR4-0009 J1", "clean and look at it"],
            () => With(design => Used(SampleTools.InService(design), 0.4, "NR4-0009"))
        ),
        new(
            "F6",
            "tool design without wear limits",
            ["states no wear limits"],
            () =>
                GateCauses.Ready(f =>
                    f with
                    {
                        ToolDesign = Accept.Value(
                            ToolDesign.Enter(
                                "TD-15",
                                1,
                                f.ToolDesign!.Geometry,
                                SamplePeople.Engineer,
                                SampleTime.Start
                            )
                        ),
                    }
                )
        ),
    ];

    private static WeldGateFacts With(Func<ToolDesign, Tool> make)
    {
        var shop = new SampleShop();
        return shop.Facts(tool: make(shop.ToolDesign));
    }

    // A row of the time before inspections were recorded.
    private static Tool BeforeChecksWereKept(ToolDesign design)
    {
        var tool = SampleTools.InService(design);
        typeof(Tool).GetProperty(nameof(Tool.Inspections))!.SetValue(tool, null);
        return tool;
    }

    private static WeldGateFacts InStore() =>
        With(design =>
            Accept.Value(Tool.Enter("T-15-02", design, SamplePeople.Engineer, SampleTime.Start))
        );

    private static Tool Used(Tool tool, double metres, string vessel)
    {
        tool.Charge(
            new ToolUse(
                Guid.CreateVersion7(SampleTime.Start),
                vessel,
                Length.FromMetres(metres),
                ChargeBasis.ProcessLog,
                SampleTime.Start,
                "J1"
            ),
            SamplePeople.Operator
        );
        return tool;
    }
}
