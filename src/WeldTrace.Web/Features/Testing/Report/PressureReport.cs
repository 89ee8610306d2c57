using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.TestReports;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Testing.Report;

/// <summary>The certificate of a proof test, or the report of a burst.</summary>
internal static class PressureReport
{
    public static TestReportModel Map(ReportSource source, PressureTest test)
    {
        var plan = source.Design.Content.Pressures;
        var common = ReportParts.Common(
            source,
            test.HasBurst ? "Burst test" : "Proof test",
            Routes.PressureTest(test.Id),
            ExaminationMethod.Pressure
        );
        return common with
        {
            Title = test.HasBurst ? "Burst test report" : common.Title,
            Particulars = [.. Particulars(source, test)],
            Results = [.. Results(source, test)],
            Tables = [Stages(plan, test), .. common.Tables],
            Ladder = LadderSchedule.Of(plan, test, source.Traces),
            Photographs = source.Photographs,
            Workings = [.. Workings(source, test)],
            Sources = ReportParts.Sources(source),
        };
    }

    private static IEnumerable<LabelledValue> Particulars(ReportSource source, PressureTest test) =>
        [
            new("Medium", test.Medium),
            new(
                "Tested",
                TimeZoneInfo
                    .ConvertTime(test.TestedAt, source.Stamp.TimeZone)
                    .ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)
            ),
            new("Gauge", $"{test.SetUp.Gauge}, standard uncertainty {test.SetUp.GaugeUncertainty}"),
            new(
                "Thermometer",
                $"{test.SetUp.Thermometer}, standard uncertainty {test.SetUp.TemperatureUncertainty}"
            ),
            new("Barometer", test.SetUp.AtmosphericPressure.ToString()),
            .. test
                .SetUp.Places()
                .Select(p => new LabelledValue(
                    test.SetUp.IsStrain ? "Strain" : "Dimension",
                    $"{p.Name}: {p.Before} before, standard uncertainty {test.SetUp.DimensionUncertainty}{(p.StrainLength is { } length ? $", over {length}" : "")}"
                )),
            .. test
                .Stages.Select(s => s.Reading.Log)
                .OfType<LoggerFile>()
                .Select(l => new LabelledValue(
                    "Logger file",
                    FormattableString.Invariant(
                        $"{l.FileName}, {l.Samples} samples, SHA-256 {l.Sha256}"
                    )
                )),
            .. ReportParts.Hazard(test.SetUp.Acknowledgement),
            .. (test.Departures ?? []).Select(d => new LabelledValue(
                $"Out of the plan, stage {d.StageNumber}",
                d.Decision is { } decision
                    ? $"{d.Sentence} {d.DecisionWord}, decided by {decision.By}: {decision.Reason}"
                    : $"{d.Sentence} Not decided."
            )),
            new("Remark", test.Remark),
        ];

    private static IEnumerable<LabelledValue> Results(ReportSource source, PressureTest test)
    {
        var content = source.Design.Content;
        yield return new("Operating pressure (MEOP)", $"{Bar(content.Pressures.Meop.Bar)} bar");
        if (content.Pressures.Basis?.LeastProof(content.Pressures) is { IsRefused: false } least)
        {
            yield return new("Least proof pressure by the rule", $"{Bar(least.Value.Bar)} bar");
        }

        foreach (var burst in test.Stages.Select(s => s.Reading.Burst).OfType<BurstReading>())
        {
            var bar = burst.Pressure.InUnit();
            yield return new("Burst at", burst.Pressure.ToString());
            yield return new("Rise in the minute before", burst.RatePerMinute.ToString());
            yield return new(
                "Times the operating pressure",
                SensibleDigits.Show(bar / content.Pressures.Meop.Bar, 4)
            );
            if (StagePrediction.Burst(content) is { } predicted)
            {
                yield return new(
                    "Predicted",
                    $"{Bar(predicted.Lowest.Bar)} to {Bar(predicted.Highest.Bar)} bar; actual over the middle {SensibleDigits.Show(2 * bar / (predicted.Lowest.Bar + predicted.Highest.Bar), 3)}"
                );
            }

            yield return new(
                "Origin",
                $"{BurstReading.ZoneWord(burst.Origin)}{(burst.JointCode is { } joint ? $", joint {joint}" : "")}{(burst.Angle is { } angle ? $", {angle} from its mark" : "")}"
            );
            yield return new("Path", burst.Path);
        }
    }

    private static ReportTable Stages(PressurePlan plan, PressureTest test) =>
        new(
            "Stages",
            ["Stage", "Target, bar", "Start", "End", "Held, s", "Dimension", "Verdict"],
            [
                .. test.Stages.Select(s =>
                    (IReadOnlyList<string>)
                        [
                            s.Stage.Name,
                            Bar(plan.Target(s.Stage).Bar),
                            s.Reading.Burst is { } burst
                                ? $"burst at {burst.Pressure}"
                                : Pair(s.Reading.StartPressure, s.Reading.StartTemperature),
                            Pair(s.Reading.EndPressure, s.Reading.EndTemperature),
                            s.Reading.HeldSeconds == 0
                                ? "–"
                                : s.Reading.HeldSeconds.ToString(CultureInfo.InvariantCulture),
                            s.Reading.Dimensions() is { Count: > 0 } measured
                                ? string.Join("; ", measured)
                                : "–",
                            TestRecord.VerdictWord(s.Verdict),
                        ]
                ),
            ]
        );

    private static IEnumerable<Working> Workings(ReportSource source, PressureTest test)
    {
        foreach (var stage in test.Stages)
        {
            foreach (var working in test.Workings(stage, source.Design))
            {
                yield return working;
            }
        }

        if (
            source.Design.Content.Pressures.Basis?.LeastProof(source.Design.Content.Pressures) is
            { IsRefused: false } least
        )
        {
            yield return least.Working;
        }

        if (test.HasBurst && StagePrediction.Burst(source.Design.Content) is { } predicted)
        {
            yield return predicted.Working;
        }
    }

    private static string Pair(
        Domain.Records.Measured? pressure,
        Domain.Records.Measured? temperature
    ) => pressure is null ? "–" : $"{pressure}, {temperature}";

    private static string Bar(double bar) => SensibleDigits.Show(bar, 4);
}
