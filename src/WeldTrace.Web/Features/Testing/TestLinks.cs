using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;

namespace WeldTrace.Web.Features.Testing;

/// <summary>The page of each kind of test.</summary>
internal static class TestLinks
{
    public static string Of(TestRecord test) =>
        test switch
        {
            LeakTest leak => Routes.LeakTest(leak.Id),
            PressureTest pressure => Routes.PressureTest(pressure.Id),
            SectionExamination section => Routes.Section(section.Id),
            _ => throw new ArgumentOutOfRangeException(
                nameof(test),
                test.Kind,
                "Unknown kind of test."
            ),
        };
}
