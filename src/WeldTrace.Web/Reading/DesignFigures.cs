namespace WeldTrace.Web.Reading;

/// <summary>Where the workings of a vessel design are, for the pages that show a figure of it.</summary>
public static class DesignFigures
{
    /// <summary>Word for a design in the address of a working.</summary>
    public const string Kind = "designs";

    /// <summary>What a leak or pressure test of the design stores, counted from 0.</summary>
    public static string Hazard(Guid design, bool isLeakTest, int index) =>
        Routes.Working(Kind, design, HazardKey(isLeakTest, index));

    public static string HazardKey(bool isLeakTest, int index) =>
        FormattableString.Invariant($"{(isLeakTest ? "leak" : "pressure")}-hazard-{index + 1}");
}
