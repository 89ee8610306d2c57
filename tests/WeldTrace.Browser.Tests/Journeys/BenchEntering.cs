using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>Types and hands in what the forms of the bench ask for; every reading is invented.</summary>
internal static class BenchEntering
{
    public static async Task BeginByStrainAsync(Visitor visitor)
    {
        await FillAsync(visitor, "Gauge", "G-31");
        await FillAsync(visitor, "Thermometer", "TH-3");
        await FillAsync(visitor, "Measured with", "SA-01");
        await visitor.FillAsync("Standard uncertainty of a gauge reading", "0.05");
        await visitor.FillAsync("Standard uncertainty of a temperature", "0.1");
        await visitor.FillAsync("Barometer", "1012");
        await visitor.FillAsync("Dimension measured before and after", "gauge R1 round the shell");
        await visitor.ChooseAsync("Measured as", "µm/m");
        await visitor.FillAsync("Its value before the test", "12");
        await visitor.FillAsync("Standard uncertainty of one measurement", "10");
        await FillAsync(visitor, "Length that the strain stands for", "170");
        await visitor.Page.GetByLabel("I have read the cautions above").CheckAsync();
        await visitor.Page.GetByLabel("goes on to burst").CheckAsync();
        await visitor.SignAsync("Begin the test");
    }

    public static async Task HoldAsync(Visitor visitor, string start, string end)
    {
        await visitor.FillAsync("Gauge pressure at the start of the hold", start);
        await visitor.FillAsync("Temperature at the start", "18.4");
        await visitor.FillAsync("Gauge pressure at the end of the hold", end);
        await visitor.FillAsync("Temperature at the end", "18.4");
        await visitor.FillAsync("Time held", "320");
    }

    public static Task FillAsync(Visitor visitor, string label, string value) =>
        visitor
            .Page.GetByLabel(new Regex("^" + Regex.Escape(label) + @"( \(may be left empty\))?$"))
            .FillAsync(value);

    public static Task HandInAsync(
        Visitor visitor,
        string label,
        string name,
        string type,
        byte[] bytes
    ) =>
        visitor
            .Page.GetByLabel(label)
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = name,
                    MimeType = type,
                    Buffer = bytes,
                }
            );

    public static byte[] Log(
        int samples,
        double step,
        Func<double, double> bar,
        Func<double, double> celsius
    )
    {
        var text = new StringBuilder("Time [s];Pressure [bar];Vessel temperature [°C]\n");
        for (var i = 0; i < samples; i++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{i * step:0.0};{bar(i * step):0.000000};{celsius(i * step):0.00}\n"
            );
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
