using System.Globalization;
using System.Text;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Testing.PressureTesting;

namespace WeldTrace.Web.Tests.Features.Testing;

/// <summary>Logger files as a bench writes them, and a pressure test that waits for one.</summary>
internal static class BenchCsv
{
    public static Task<Outcome> BeginAsync(RoutedVessel vessel) =>
        new PressureTestingHandler(
            vessel.Site.Database,
            vessel.Site.Passwords,
            vessel.Site.Clock
        ).BeginAsync(
            vessel.Serial,
            40,
            new BeginPressureForm
            {
                Id = Guid.CreateVersion7(SampleTime.Start),
                Gauge = "G-7",
                GaugeUncertainty = "0.01",
                Thermometer = "T-2",
                DimensionInstrument = "CAL-7",
                TemperatureUncertainty = "0.1",
                AtmosphericPressure = "1013",
                DimensionName = "outer diameter at mid-length",
                DimensionBefore = "130.000",
                DimensionUncertainty = "0.005",
                CautionsRead = true,
                Password = WorkingSite.Password,
            },
            vessel.Inspector,
            CancellationToken.None
        );

    public static string Of(
        int samples,
        double step,
        Func<double, double> bar,
        Func<double, double> celsius,
        Func<double, double>? clock = null
    )
    {
        var text = new StringBuilder("Time [s],Pressure [bar],Vessel temperature [°C]\n");
        for (var i = 0; i < samples; i++)
        {
            var t = i * step;
            text.Append(
                CultureInfo.InvariantCulture,
                $"{(clock?.Invoke(t) ?? t):0.0},{bar(t):0.000000},{celsius(t):0.0000}\n"
            );
        }

        return text.ToString();
    }
}
