using WeldTrace.Domain.Limits;

namespace WeldTrace.TestSupport.Records;

public static class SampleLimits
{
    /// <summary>The tables that come with the program, as a site has them after it was set up.</summary>
    public static IReadOnlyList<LimitTable> Shipped { get; } =
        ShippedLimits.Missing([], SamplePeople.QualityManager, SampleTime.Start);

    public static LimitTable Of(string code) => Shipped.Single(t => t.Code == code);

    /// <summary>A set of its own, to be changed.</summary>
    public static IReadOnlyList<LimitTable> Fresh() =>
        ShippedLimits.Missing([], SamplePeople.QualityManager, SampleTime.Start);
}
