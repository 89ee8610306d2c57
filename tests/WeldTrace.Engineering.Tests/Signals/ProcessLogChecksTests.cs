using System.Globalization;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;
using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.Signals;

/// <summary>
/// Every row of h_process_log.csv: a constructed log judged twice (by explicit loops and vectorised), thinning by two public reference
/// implementations, a constructed signal by FFT, robust statistics by R, published facts as read in the abstracts named there.
/// </summary>
public sealed class ProcessLogChecksTests
{
    private static readonly CheckTable Table = SignalChecks.AddTo(Checks());

    public static TheoryData<int, string> Data => Table.Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void Signals_CheckedCase_GiveCheckedValue(int row, string label)
    {
        Assert.Equal(label, Table.Rows[row].ToString());
        Table.Run(row);
    }

    private static CheckTable Checks()
    {
        var table = new CheckTable("h_process_log.csv");
        Phases(table);
        Positions(table);
        Excursions(table);
        Statistics(table);
        return Thinning(table);
    }

    private static void Phases(CheckTable table)
    {
        var points = new (string Quantity, Func<ToolPass, LogPoint?> Point)[]
        {
            ("plunge start (first Fz >= 0.5 kN)", pass => pass.Contact),
            ("dwell start (first z <= z_min+0.02 mm)", pass => pass.DwellStart),
            (
                "traverse start (first feed >= 8 mm/min after dwell start)",
                pass => pass.TraverseStart
            ),
            ("traverse end (last feed >= 8 mm/min)", pass => pass.TraverseEnd),
            (
                "retract start (first z > z_min+0.02 mm after traverse end)",
                pass => pass.RetractStart
            ),
            ("tool free (first Fz < 0.5 kN after retract start)", pass => pass.ToolFree),
        };
        foreach (var (quantity, point) in points)
        {
            table.Number("H1.1", quantity, row => point(Pass(row))!.Value.TimeSeconds);
            table.Number("H1.2", quantity, row => point(Pass(row))!.Value.Index);
        }
    }

    private static void Positions(CheckTable table) =>
        table
            .Number("H2.1", "weld length", _ => Position()[^1] * 1e3)
            .Number("H2.2", "weld position at t = 40.0 s", row => At(row["t_s"]))
            .Number("H2.2", "weld position at t = 64.0 s", row => At(row["t_s"]))
            .Number("H2.2", "weld position at t = 100.0 s", row => At(row["t_s"]));

    private static void Excursions(CheckTable table) =>
        table
            .Number("H3", "raw out-of-band runs", row => Detect(row).Detector.RawStretches)
            .Number("H3", "excursions after merge and debounce", row => Detect(row).Found.Count)
            .Number("H3", "fraction in band", row => Detect(row).Detector.FractionInside)
            .Text("H3", "side", row => One(row).Side == ExcursionSide.High ? "high" : "low")
            .Number("H3", "start time", row => One(row).StartSeconds)
            .Number("H3", "end time", row => One(row).EndSeconds)
            .Number("H3", "start position", row => One(row).StartMetres * 1e3)
            .Number(
                "H3",
                "excursion length",
                row => (One(row).EndMetres - One(row).StartMetres) * 1e3
            );

    private static void Statistics(CheckTable table) =>
        table
            .Number("H4.1", "mean", row => Steady(row).MeanInSampleUnit)
            .Number(
                "H4.1",
                "sample standard deviation",
                row => Steady(row).StandardDeviationInSampleUnit
            )
            .Number("H4.1", "median", row => Steady(row).MedianInSampleUnit)
            .Number("H4.1", "samples", row => Steady(row).Count)
            .Number("H4.2", "energy", _ => SpindleEnergy().Kilojoules)
            .Number("H4.2", "line energy", _ => SpindleEnergy().Joules / (At(130) - At(35)));

    private static CheckTable Thinning(CheckTable table) =>
        table
            .Text(
                "H6.LTTB60",
                "selected indices (with repeats, sorted)",
                row => string.Join('|', Lttb60(row))
            )
            .Text(
                "H6.LTTB60",
                "global maximum kept",
                row => Keeps(Series60(), Lttb60(row), Series60().Max())
            )
            .Text(
                "H6.LTTB60",
                "global minimum kept",
                row => Keeps(Series60(), Lttb60(row), Series60().Min())
            )
            .Text(
                "H6.TRAP",
                "one-sample spike at index 1180 kept by M4 with 100 points",
                row => Says(M4(CheckLog.Instance.TorqueNewtonMetres, 25).Contains(1180))
            )
            .Text(
                "H6.DROP",
                "M4 keeps both",
                row => Says(M4(TwoSpikes(), 3).Contains(50) && M4(TwoSpikes(), 3).Contains(52))
            );

    private static ToolPass Pass(CheckRow row)
    {
        var log = CheckLog.Instance;
        var segmentation = new PhaseSegmentation(
            new PhaseThresholds
            {
                ContactForce = Force.FromKilonewtons(row["F_on_kN"]),
                TraverseSpeed = Speed.FromMillimetresPerMinute(row["v_on_mm_min"]),
                DepthTolerance = Length.FromMillimetres(row["z_hold_mm"]),
            }
        );
        var (seconds, force, depth, speed) = (
            log.Seconds,
            log.ForceKilonewtons,
            log.DepthMetres,
            log.SpeedMetresPerSecond
        );
        for (var i = 0; i < seconds.Length; i++)
        {
            segmentation.Add(new ToolSample(seconds[i], force[i] * 1e3, depth[i], speed[i]));
        }

        return Assert.Single(segmentation.Complete().Passes);
    }

    private static double[] Position()
    {
        var seam = SeamPosition.FromTravelSpeed();
        return [.. CheckLog.Instance.Seconds.Zip(CheckLog.Instance.SpeedMetresPerSecond, seam.Add)];
    }

    private static double At(double seconds) =>
        Position()[Array.FindIndex(CheckLog.Instance.Seconds, time => time == seconds)] * 1e3;

    private static (ExcursionDetector Detector, IReadOnlyList<Excursion> Found) Detect(CheckRow row)
    {
        var rule = new ExcursionRule(TimeSpan.FromSeconds(row["sample_period_s"]))
        {
            Debounce = TimeSpan.FromSeconds(row["min_duration_s"]),
            MergeGap = TimeSpan.FromSeconds(row["merge_gap_s"]),
        };
        var detector = new ExcursionDetector(row["low"], row["high"], rule);
        var (values, position) = (CheckLog.Instance.Named(row.Text("channel")), Position());
        foreach (var i in SteadyIndices())
        {
            detector.Add(CheckLog.Instance.Seconds[i], values[i], position[i]);
        }

        return (detector, detector.Complete());
    }

    private static Excursion One(CheckRow row) =>
        Detect(row).Found[int.Parse(row.Id.Split('.')[^1], CultureInfo.InvariantCulture) - 1];

    private static IEnumerable<int> SteadyIndices() =>
        Enumerable
            .Range(0, CheckLog.Instance.Seconds.Length)
            .Where(i => CheckLog.Instance.Seconds[i] is >= 35 and <= 130);

    private static SteadyStatistics Steady(CheckRow row)
    {
        var channel = CheckLog.Instance.Named(row.Text("channel"));
        double[] samples = [.. SteadyIndices().Select(i => channel[i])];
        var running = new RunningStatistics();
        var histogram = new CountingHistogram(
            samples.Min(),
            0.001,
            (int)((samples.Max() - samples.Min()) * 1000) + 2
        );
        running.Add(samples.AsSpan(0, 300));
        running.Add(samples.AsSpan(300));
        histogram.Add(samples);
        return SteadyStatistics.From(running, histogram);
    }

    private static Energy SpindleEnergy()
    {
        var log = CheckLog.Instance;
        var (seconds, torque, spindle) = (
            log.Seconds,
            log.TorqueNewtonMetres,
            log.SpindlePerMinute
        );
        var integral = new TrapezoidIntegral();
        foreach (var i in SteadyIndices())
        {
            integral.Add(
                seconds[i],
                RotationSpeed.FromRevolutionsPerMinute(spindle[i]).RadiansPerSecond * torque[i]
            );
        }

        return Energy.FromJoules(integral.Total);
    }

    private static int[] Lttb60(CheckRow row) =>
        M4(Series60(), (int)row["n_out"] / MinMaxDecimation.SamplesPerStretch);

    internal static double[] Series60() =>
        [
            .. CsvLines
                .Read("dataset_h_lttb60.csv")
                .Skip(1)
                .Select(fields => double.Parse(fields[1], CultureInfo.InvariantCulture)),
        ];

    internal static double[] TwoSpikes()
    {
        var values = new double[100];
        (values[50], values[52]) = (5, -6);
        return values;
    }

    private static int[] M4(double[] values, int stretches)
    {
        var indices = new int[stretches * MinMaxDecimation.SamplesPerStretch];
        double[] seconds = [.. Enumerable.Range(0, values.Length)];
        return indices[..MinMaxDecimation.SelectM4(seconds, values, stretches, indices)];
    }

    private static string Keeps(double[] values, int[] indices, double value) =>
        Says(indices.Any(index => values[index] == value));

    internal static string Says(bool fact) => fact ? "true" : "false";
}
