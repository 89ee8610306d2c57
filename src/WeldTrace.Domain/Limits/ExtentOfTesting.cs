using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Limits;

/// <summary>A test that a qualification needs on each test piece.</summary>
/// <param name="Test">One of <see cref="LimitSchema.Tests"/>.</param>
/// <param name="Number">How many specimens, or how often; 1 or more.</param>
public sealed record NeededTest(string Test, int Number);

/// <summary>Extent of testing of a qualification.</summary>
public static class ExtentOfTesting
{
    /// <summary>The tests that a table asks for; empty when it has no row for the joint.</summary>
    /// <param name="table">Table of the extent of testing.</param>
    /// <param name="jointType">Joint type, for instance <c>butt</c>.</param>
    /// <param name="group">Material group; null when the alloy has none.</param>
    /// <param name="thickness">Thickness of the joint.</param>
    public static IReadOnlyList<NeededTest> Of(
        LimitTable table,
        string jointType,
        string? group,
        Length thickness
    ) =>
        [
            .. LimitRow
                .Of(table, LimitKind.ExtentOfTesting)
                .Where(r =>
                    r.Fits(0, jointType)
                    && r.FitsGroup(1, group)
                    && r.FitsThickness(4, 5, thickness)
                )
                .Select(r => new NeededTest(r.Cells[2], (int)Math.Ceiling(r.Number(3) ?? 1))),
        ];
}
