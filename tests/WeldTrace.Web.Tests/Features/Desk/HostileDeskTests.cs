using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Documents.CalculationSheets;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Desk;

namespace WeldTrace.Web.Tests.Features.Desk;

/// <summary>Whatever stands in an address: the page says what is wrong, or shows and prints a result. It never fails.</summary>
public sealed class HostileDeskTests
{
    private static readonly string[] Texts =
    [
        "",
        "0",
        "-1",
        "1e-9",
        "1e-300",
        "0.0001",
        "1",
        "7",
        "1e5",
        "999999999",
        "1e300",
        "NaN",
        "Infinity",
        "1,5",
        "1 2 3",
        "<b>",
        "5 failed\n5 failed\n5 failed",
        "1 f\n1e6 f",
        "1e-6 failed\n2 failed\n3 in use",
        "5 5 5 5",
        "1 1e8 3",
    ];

    public static TheoryData<string> Names => [.. Subjects().Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Sheet_AnyTextInAnyField_IsRefusedOrPrinted(string name)
    {
        var subject = Subjects().Single(s => s.Name == name);
        var example = DeskSheet.Read(subject, "", UnitSystem.Metric);
        foreach (var (field, text) in example.Typed.Keys.SelectMany(f => Texts.Select(t => (f, t))))
        {
            var values = example.Typed.Select(t =>
                $"{t.Key}={Uri.EscapeDataString(t.Key == field ? text : t.Value)}"
            );
            var sheet = DeskSheet.Read(subject, string.Join('&', values), UnitSystem.InchPound);

            Assert.True(
                sheet.Faults.Count > 0 != sheet.Calculation is not null,
                $"{field} = '{text}' is neither refused nor calculated, or both."
            );
            if (sheet.Calculation is { } calculation)
            {
                Assert.All(
                    calculation.Figures.Select(f => f.Value!).Append(Places(calculation)),
                    shown => Assert.DoesNotContain("NaN", shown, StringComparison.Ordinal)
                );
                Assert.True(Print(calculation) > 0);
            }
        }
    }

    private static string Places(Calculation calculation) =>
        calculation.Plot is { } plot
            ? string.Join(' ', plot.Plot.Points.Select(p => p.Place).Append(default))
                + string.Join(' ', plot.Plot.Lines.Select(l => $"{l.From} {l.To}"))
            : "";

    private static long Print(Calculation calculation)
    {
        using MemoryStream pdf = new();
        CalculationSheetExporter.Write(
            new(
                new Documents.DocumentStamp
                {
                    SiteName = "Test works",
                    PrintedBy = "Ada",
                    PrintedAt = SampleTime.Start,
                    TimeZone = TimeZoneInfo.Utc,
                },
                "https://weld.example/desk",
                calculation
            ),
            pdf
        );
        return pdf.Length;
    }

    private static IEnumerable<IDeskSubject> Subjects() =>
        new ServiceCollection().AddDesk().BuildServiceProvider().GetServices<IDeskSubject>();
}
