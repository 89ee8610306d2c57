using System.Globalization;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.Signals;

/// <summary>The constructed friction-stir log: 10 Hz, 150 s, 100 s of travel at 200 mm/min with ramps.</summary>
internal sealed class CheckLog
{
    private readonly double[][] _columns;

    private CheckLog()
    {
        double[][] rows =
        [
            .. CsvLines
                .Read("dataset_h_log.csv")
                .Skip(1)
                .Select(fields => fields.Select(Number).ToArray()),
        ];
        _columns =
        [
            .. Enumerable.Range(0, 6).Select(column => rows.Select(row => row[column]).ToArray()),
        ];
        SpeedMetresPerSecond =
        [
            .. _columns[4].Select(value => Speed.FromMillimetresPerMinute(value).MetresPerSecond),
        ];
        DepthMetres = [.. _columns[5].Select(value => -value * 1e-3)];
    }

    public static CheckLog Instance { get; } = new();

    public double[] Seconds => _columns[0];

    public double[] ForceKilonewtons => _columns[1];

    public double[] TorqueNewtonMetres => _columns[2];

    public double[] SpindlePerMinute => _columns[3];

    public double[] SpeedMetresPerSecond { get; }

    public double[] DepthMetres { get; }

    public double[] Named(string channel) =>
        channel switch
        {
            "Fz_kN" => ForceKilonewtons,
            "torque_Nm" => TorqueNewtonMetres,
            _ => throw new ArgumentOutOfRangeException(
                nameof(channel),
                channel,
                "Not judged here."
            ),
        };

    private static double Number(string text) =>
        double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
