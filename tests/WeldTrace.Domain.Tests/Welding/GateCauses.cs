using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>One thing that is wrong in an otherwise ready shop.</summary>
/// <param name="Rule">Rule that must forbid the run.</param>
/// <param name="Name">What is wrong.</param>
/// <param name="Words">Words of the reason.</param>
/// <param name="Facts">Makes the shop.</param>
internal sealed record GateCause(
    string Rule,
    string Name,
    string[] Words,
    Func<WeldGateFacts> Facts
);

/// <summary>Every state of the records behind F1 to F9 that forbids a run.</summary>
internal static class GateCauses
{
    public static IReadOnlyList<GateCause> All { get; } =
    [
        .. RouteCauses.All,
        .. CertificateCauses.All,
        .. EquipmentCauses.All,
        .. ToolCauses.All,
        .. MaterialCauses.All,
        .. PreparationCauses.All,
    ];

    /// <summary>A shop with one thing wrong.</summary>
    public static WeldGateFacts Named(string name) => All.Single(c => c.Name == name).Facts();

    /// <summary>The facts of a ready shop, with something changed.</summary>
    public static WeldGateFacts Ready(Func<WeldGateFacts, WeldGateFacts> change) =>
        change(new SampleShop().Facts());
}
