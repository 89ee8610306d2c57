using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using WeldTrace.Web.Demo;

namespace WeldTrace.Benchmarks.Pages;

/// <summary>
/// Whole requests for the live page of the bench after a stage whose log has 20,000 readings, signed in, on the database. Limit:
/// less than 100 ms, up to which an answer is felt as immediate.
/// </summary>
public class BenchPageBenchmark
{
    private const string Step = "/vessels/NR10-0003/pressure/90";
    private const int Readings = 20_000;
    private DemoSite _site = null!;
    private HttpClient _inspector = null!;

    [GlobalSetup]
    public async Task SetupAsync()
    {
        _site = DemoSite.Start();
        _inspector = await _site.SignInAsync(DemoPeople.Inspector);
        await SendAsync(
            "pressure-begin",
            ("In.Id", Guid.CreateVersion7().ToString()),
            ("In.Gauge", "G-31"),
            ("In.Thermometer", "TH-3"),
            ("In.DimensionInstrument", "MS-04"),
            ("In.GaugeUncertainty", "0.05"),
            ("In.TemperatureUncertainty", "0.1"),
            ("In.AtmosphericPressure", "1012"),
            ("In.DimensionName", "outer diameter at mid-length"),
            ("In.DimensionUnit", "mm"),
            ("In.DimensionBefore", "170.02"),
            ("In.DimensionUncertainty", "0.005"),
            ("In.CautionsRead", "true"),
            ("In.SignerName", DemoPeople.Inspector.SignInName),
            ("In.Password", DemoPeople.Password)
        );
        var page = await SendAsync("pressure-stage", ("In.StageNumber", "1"));
        if (!page.Contains("Stage 2 of", StringComparison.Ordinal))
        {
            throw new InvalidOperationException(page);
        }
    }

    [GlobalCleanup]
    public async Task CleanupAsync()
    {
        _inspector.Dispose();
        await _site.DisposeAsync();
    }

    [Benchmark]
    public Task<string> PageAsync() => _inspector.GetStringAsync(new Uri(Step, UriKind.Relative));

    private async Task<string> SendAsync(
        string form,
        params IReadOnlyList<(string Name, string Value)> fields
    )
    {
        using var content = new MultipartFormDataContent();
        content.Add(new StringContent(form), "_handler");
        content.Add(
            new StringContent(DemoSite.TokenOf(await PageAsync())),
            "__RequestVerificationToken"
        );
        foreach (var (name, value) in fields)
        {
            content.Add(new StringContent(value), name);
        }

        content.Add(new ByteArrayContent(Log()), "In.Log", "hold.csv");
        using var answer = await _inspector.PostAsync(new Uri(Step, UriKind.Relative), content);
        return await answer.Content.ReadAsStringAsync();
    }

    private static byte[] Log()
    {
        var text = new StringBuilder("Time [s];Pressure [bar];Vessel temperature [°C]\n");
        for (var i = 0; i < Readings; i++)
        {
            var seconds = i / 10.0;
            var bar = seconds < 240 ? seconds * 40.3 / 240 : 40.3 - (seconds * 1e-6);
            text.Append(CultureInfo.InvariantCulture, $"{seconds:0.0};{bar:0.000000};18.40\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
