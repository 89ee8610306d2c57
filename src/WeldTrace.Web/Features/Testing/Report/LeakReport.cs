using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.TestReports;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Testing.Report;

/// <summary>The certificate of a leak test.</summary>
internal static class LeakReport
{
    private static readonly Temperature Reference = Temperature.FromDegreesCelsius(20);
    private static readonly Temperature Standard = Temperature.FromDegreesCelsius(0);

    public static TestReportModel Map(ReportSource source, LeakTest test)
    {
        var common = ReportParts.Common(
            source,
            "Leak test",
            Routes.LeakTest(test.Id),
            ExaminationMethod.Leak
        );
        return common with
        {
            Particulars = [.. Particulars(source, test)],
            Results =
            [
                new("Leak rate at 20 °C", Rate(test.Result.Rate)),
                new("Expanded uncertainty, k = 2", Rate(test.Result.ExpandedUncertainty)),
                new("Smallest leak that the test would have shown", Rate(test.Result.Smallest)),
                new("Limit", Rate(test.Result.Limit)),
                new(
                    "Hold that would decide",
                    test.Result.DecidingSeconds is { } s
                        ? $"{SensibleDigits.Show(s, 3)} s with the same readings"
                        : null
                ),
            ],
            Tables = [.. Readings(test), .. common.Tables],
            Plots = [.. Plots(source, test)],
            Workings = [test.Working(source.Design)],
            Sources = ReportParts.Sources(source),
        };
    }

    private static IEnumerable<LabelledValue> Particulars(ReportSource source, LeakTest test) =>
        [
            new("Method", Method(test.Method)),
            new("Tested", SiteTimeText(source, test.TestedAt)),
            .. test.Decay is { } decay ? Decay(source, decay)
            : test.Tracer is { } tracer ? Tracer(tracer)
            : Bubbles(test.Bubble!),
            .. ReportParts.Hazard(test.Acknowledgement),
            new("Remark", test.Remark),
        ];

    private static string Method(LeakMethod method) =>
        method switch
        {
            LeakMethod.PressureDecay => "pressure decay, compensated for temperature",
            LeakMethod.ImmersionBubble => "immersion, bubbles",
            _ => "tracer gas, compared with a calibrated leak",
        };

    private static IEnumerable<LabelledValue> Decay(ReportSource source, DecayObservation seen) =>
        [
            new(
                "Volume",
                $"{SensibleDigits.Show(source.Design.Content.Volume.Litres, 4)} l, standard uncertainty {seen.VolumeUncertaintyPercent}"
            ),
            new("Barometer", seen.AtmosphericPressure.ToString()),
            new("Standard uncertainty of a pressure", seen.GaugeUncertainty.ToString()),
            new("Standard uncertainty of a temperature", seen.TemperatureUncertainty.ToString()),
            new(
                "Logger file",
                seen.Log is { } log
                    ? FormattableString.Invariant(
                        $"{log.FileName}, {log.Samples} samples, SHA-256 {log.Sha256}; {seen.Readings.Count} of them, evenly spaced, are the readings"
                    )
                    : null
            ),
        ];

    private static IEnumerable<LabelledValue> Bubbles(BubbleTest seen) =>
        [
            new("Gauge pressure", seen.GaugePressure.ToString()),
            new("Liquid and depth", $"{seen.Liquid}, {seen.DepthOfLiquid}"),
            new("Observed", FormattableString.Invariant($"{seen.ObservedSeconds} s")),
            new("Bubbles counted", seen.Bubbles.ToString(CultureInfo.InvariantCulture)),
            new("Bubble diameter", seen.BubbleDiameter.ToString()),
            new("Where", seen.Where),
        ];

    private static IEnumerable<LabelledValue> Tracer(TracerObservation seen) =>
        [
            new(
                "Tracer gas",
                $"{seen.Gas}, {seen.ConcentrationPercent}, standard uncertainty {seen.ConcentrationUncertaintyPercent}"
            ),
            new("Gauge pressure", seen.GaugePressure.ToString()),
            new("Dwell", FormattableString.Invariant($"{seen.DwellSeconds} s")),
            new(
                "Calibrated leak",
                $"{seen.CalibratedLeak}, standard uncertainty {seen.CalibratedLeakUncertainty}"
            ),
            new("Signal with the calibrated leak", seen.SignalOfCalibratedLeak.Digits),
            new("Background", seen.Background.Digits),
            new("Signal on the vessel", seen.SignalOfVessel.Digits),
            new("Standard uncertainty of a signal", seen.SignalUncertainty.Digits),
            new("Where the signal was greatest", seen.Places.Length == 0 ? null : seen.Places),
        ];

    private static IEnumerable<ReportTable> Readings(LeakTest test) =>
        test.Decay is not { } decay
            ? []
            :
            [
                new ReportTable(
                    "Readings",
                    ["Time, s", "Gauge pressure, bar", "Vessel or gas, °C", "Room, °C"],
                    [
                        .. decay.Readings.Select(r =>
                            (IReadOnlyList<string>)
                                [
                                    r.Seconds.ToString(CultureInfo.InvariantCulture),
                                    r.GaugePressure.Digits,
                                    r.GasTemperature.Digits,
                                    r.AmbientTemperature?.Digits ?? "–",
                                ]
                        ),
                    ]
                ),
            ];

    private static IEnumerable<ReportPlot> Plots(ReportSource source, LeakTest test) =>
        test switch
        {
            { Decay: { } decay } => [LeakPlots.Pressure(decay), LeakPlots.Temperature(decay)],
            { Bubble: { } bubble } => [LeakPlots.Places(source.Design.Content, bubble)],
            _ => [],
        };

    private static string SiteTimeText(ReportSource source, DateTimeOffset at) =>
        TimeZoneInfo
            .ConvertTime(at, source.Stamp.TimeZone)
            .ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static string Rate(LeakRate rate)
    {
        var standard = LeakRates.StandardCubicCentimetresPerSecond(rate, Reference, Standard);
        return $"{Digits(rate.SiValue)} Pa·m³/s = {Digits(rate.MillibarLitresPerSecond)} mbar·l/s = {Digits(standard)} std cm³/s (0 °C)";
    }

    private static string Digits(double value) => SensibleDigits.Show(value, 3);
}
