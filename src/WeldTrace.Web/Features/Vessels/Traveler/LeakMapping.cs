using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

internal static class LeakMapping
{
    private static readonly Temperature Reference = Temperature.FromDegreesCelsius(20);
    private static readonly Temperature Standard = Temperature.FromDegreesCelsius(0);

    public static LeakTestSheet Map(LeakTest test) =>
        new()
        {
            Reference = FormattableString.Invariant($"step {test.StepSequence}"),
            Method = test.Method switch
            {
                LeakMethod.PressureDecay => "pressure decay",
                LeakMethod.ImmersionBubble => "immersion bubbles",
                _ => "tracer gas",
            },
            Inspector = test.InspectorName,
            TestedAt = test.TestedAt,
            Particulars =
            [
                .. Found(test),
                .. Seen(test),
                new("Stored energy and stand-off read by", test.Acknowledgement?.PrintedName),
                new("Remark", test.Remark),
            ],
            Readings = [.. (test.Decay?.Readings ?? []).Select(Reading)],
            Verdict = PrintedMarks.Of(
                DomainMarks.Of(test.Verdict),
                TestRecord.VerdictWord(test.Verdict)
            ),
            Explanation = test.VerdictSentence,
            Superseded = Withdrawals.Of(test),
        };

    private static IEnumerable<LabelledValue> Found(LeakTest test) =>
        [
            new("Leak rate at 20 °C", Rate(test.Result.Rate)),
            new("Expanded uncertainty, k = 2", Rate(test.Result.ExpandedUncertainty)),
            new("Smallest rate the test would have shown", Rate(test.Result.Smallest)),
            new("Limit", Rate(test.Result.Limit)),
        ];

    private static IEnumerable<LabelledValue> Seen(LeakTest test) =>
        test.Decay is { } decay ? Decay(decay)
        : test.Tracer is { } tracer ? Tracer(tracer)
        : Bubble(test.Bubble!);

    private static IEnumerable<LabelledValue> Tracer(TracerObservation seen) =>
        [
            new("Tracer gas", $"{seen.Gas}, {seen.ConcentrationPercent}"),
            new("Gauge pressure", seen.GaugePressure.ToString()),
            new("Dwell", FormattableString.Invariant($"{seen.DwellSeconds} s")),
            new("Calibrated leak", seen.CalibratedLeak.ToString()),
            new(
                "Signals of the detector",
                $"calibrated leak {seen.SignalOfCalibratedLeak.Digits}, background {seen.Background.Digits}, vessel {seen.SignalOfVessel.Digits}"
            ),
            new("Where", seen.Places),
            new("Instruments", seen.Instruments),
        ];

    private static IEnumerable<LabelledValue> Decay(DecayObservation seen) =>
        [
            new("Instruments", seen.Instruments),
            new("Barometer", seen.AtmosphericPressure.ToString()),
            new("Standard uncertainty of the gauge", seen.GaugeUncertainty.ToString()),
            new("Standard uncertainty of the thermometer", seen.TemperatureUncertainty.ToString()),
            new(
                "Logger file",
                seen.Log is { } log
                    ? FormattableString.Invariant(
                        $"{log.FileName}, {log.Samples} samples, {seen.Readings.Count} of them below"
                    )
                    : null
            ),
        ];

    private static IEnumerable<LabelledValue> Bubble(BubbleTest seen) =>
        [
            new("Gauge pressure", seen.GaugePressure.ToString()),
            new("Liquid and depth", $"{seen.Liquid}, {seen.DepthOfLiquid}"),
            new("Observed", FormattableString.Invariant($"{seen.ObservedSeconds} s")),
            new("Bubbles counted", seen.Bubbles.ToString(CultureInfo.InvariantCulture)),
            new("Bubble diameter", seen.BubbleDiameter.ToString()),
            new(
                "Where",
                string.Join(
                    "; ",
                    (seen.Marked ?? [])
                        .Select(p => $"{p.JointCode ?? "away from the welds"} at {p.Angle}")
                        .Append(seen.Places)
                        .Where(w => w.Length > 0)
                )
            ),
            new("Instruments", seen.Instruments),
        ];

    private static LeakReadingLine Reading(LeakReading reading) =>
        new(
            TimeSpan.FromSeconds(reading.Seconds),
            Pressure.FromBar(reading.GaugePressure.InUnit()),
            Temperature.FromDegreesCelsius(reading.GasTemperature.InUnit())
        );

    private static string Digits(double value) => SensibleDigits.Show(value, 3);

    private static string Rate(LeakRate rate)
    {
        var standard = LeakRates.StandardCubicCentimetresPerSecond(rate, Reference, Standard);
        return $"{Digits(rate.SiValue)} Pa·m³/s = {Digits(rate.MillibarLitresPerSecond)} mbar·l/s = {Digits(standard)} std cm³/s (0 °C)";
    }
}
