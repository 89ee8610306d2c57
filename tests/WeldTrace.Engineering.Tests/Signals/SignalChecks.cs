using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;
using WeldTrace.Engineering.Statistics;
using WeldTrace.Engineering.Tests.Checks;
using WeldTrace.Engineering.Tests.Statistics;

namespace WeldTrace.Engineering.Tests.Signals;

/// <summary>Rows H5 to H9: largest triangles, spectrum, robust statistics, published facts.</summary>
internal static class SignalChecks
{
    public static CheckTable AddTo(CheckTable table)
    {
        AddTriangles(table);
        AddSpectrum(table);
        AddRobust(table);
        foreach (var figure in PublishedSignals.All)
        {
            table.Number("H9", figure.Subject, _ => figure.Low);
        }

        return table;
    }

    private static void AddTriangles(CheckTable table) =>
        table
            .Text("H5", "selected indices", row => string.Join('|', Thinned(row)))
            .Number("H5", "checksum", row => Thinned(row).Sum(index => Series(row)[index]))
            .Text(
                "H6.TRAP",
                "one-sample spike at index 1180 kept by LTTB with 100 points",
                row => Says(Thinned(row).Contains(1180))
            )
            .Text(
                "H6.DROP",
                "LTTB keeps index 50 (the maximum)",
                row => Says(Thinned(row).Contains(50))
            )
            .Text(
                "H6.DROP",
                "LTTB keeps index 52 (the minimum)",
                row => Says(Thinned(row).Contains(52))
            );

    private static void AddSpectrum(CheckTable table) =>
        table
            .Number(
                "H7.1",
                "spindle frequency",
                row => RotationSpeed.FromRevolutionsPerMinute(row["n_rpm"]).RevolutionsPerSecond
            )
            .Number("H7.1", "amplitude at spindle frequency (bin 400)", row => Line(row).Amplitude)
            .Number(
                "H7.1",
                "amplitude at 4 Hz (bin 120)",
                row => SpindleLine.AmplitudeAt(Signal(row), row["fs_Hz"], 4)
            )
            .Number("H7.2", "low-band RMS", row => Line(row).LowBandRms)
            .Number("H7.2", "ratio", row => Line(row).LowBandRatio!.Value)
            .Number("H7.3", "amplitude at bin 400 by Goertzel", row => Line(row).Amplitude);

    private static void AddRobust(CheckTable table) =>
        table
            .Number("H8", "median", row => Robust(row).Median)
            .Number("H8", "MAD (raw)", row => Robust(row).MedianDeviation)
            .Number("H8", "MAD*1.4826", row => Robust(row).RobustDeviation)
            .Number("H8", "quartile 1, type 7", row => Robust(row).Quantile(0.25))
            .Number("H8", "quartile 3, type 7", row => Robust(row).Quantile(0.75))
            .Number("H8", "quartile 1, type 6", row => Robust(row).Quantile(0.25, QuantileType.Six))
            .Number("H8", "quartile 3, type 6", row => Robust(row).Quantile(0.75, QuantileType.Six))
            .Number("H8", "largest |modified z|", row => Robust(row).FarthestModifiedZ!.Value)
            .Number("H8", "flagged values", row => Robust(row).Pointed());

    private static double[] Series(CheckRow row) =>
        row.Id == "H6.DROP"
            ? ProcessLogChecksTests.TwoSpikes()
            : row.Text("dataset") switch
            {
                "LTTB60" => ProcessLogChecksTests.Series60(),
                "LOG_FZ" => CheckLog.Instance.ForceKilonewtons,
                "LOG_TORQUE" => CheckLog.Instance.TorqueNewtonMetres,
                var other => throw new KeyNotFoundException(other),
            };

    private static int[] Thinned(CheckRow row)
    {
        var values = Series(row);
        double[] places = [.. Enumerable.Range(0, values.Length)];
        var indices = new int[(int)row["n_out"]];
        return indices[..LargestTriangle.Select(places, values, indices)];
    }

    /// <summary>The signal that the row writes out: mean 5, 0.8 at the spindle of 800 rpm, 0.3 at 4 Hz.</summary>
    private static double[] Signal(CheckRow row)
    {
        Assert.Equal("5+0.8*sin(2*pi*(800/60)*t)+0.3*sin(2*pi*4*t+0.5)", row.Text("x(t)"));
        return
        [
            .. Enumerable
                .Range(0, (int)row["N"])
                .Select(i => i / row["fs_Hz"])
                .Select(t =>
                    5
                    + (0.8 * Math.Sin(2 * Math.PI * (800.0 / 60) * t))
                    + (0.3 * Math.Sin((2 * Math.PI * 4 * t) + 0.5))
                ),
        ];
    }

    private static SpindleLine Line(CheckRow row) =>
        SpindleLine
            .Compute(Signal(row), row["fs_Hz"], RotationSpeed.FromRevolutionsPerMinute(800))
            .Value;

    private static RobustSample Robust(CheckRow row) =>
        RobustSample.Of(StatisticsData.Values(row.Text("dataset"))).Value;

    private static string Says(bool fact) => ProcessLogChecksTests.Says(fact);
}
