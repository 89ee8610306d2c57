using WeldTrace.Documents;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

internal static class PressureMapping
{
    public static PressureTestSheet Map(TravelerSource source, PressureTest test)
    {
        var plan = source.History.Design.Content.Pressures;
        return new PressureTestSheet
        {
            Reference = FormattableString.Invariant($"step {test.StepSequence}"),
            Title = test.HasBurst ? "Burst test," : "Pressure test,",
            Inspector = test.InspectorName,
            TestedAt = test.TestedAt,
            Particulars =
            [
                new LabelledValue("Medium", test.Medium),
                new LabelledValue(
                    "Gauge",
                    $"{test.SetUp.Gauge}, standard uncertainty {test.SetUp.GaugeUncertainty}"
                ),
                new LabelledValue(
                    "Thermometer",
                    $"{test.SetUp.Thermometer}, standard uncertainty {test.SetUp.TemperatureUncertainty}"
                ),
                new LabelledValue("Barometer", test.SetUp.AtmosphericPressure.ToString()),
                new LabelledValue(
                    "Stored energy and stand-off read by",
                    test.SetUp.Acknowledgement?.PrintedName ?? test.InspectorName
                ),
                .. Burst(test),
                .. (test.Departures ?? []).Select(d => new LabelledValue(
                    "Out of the plan",
                    Text(d)
                )),
                new LabelledValue("Remark", test.Remark),
            ],
            Stages = [.. test.Stages.Select(s => Stage(plan, s))],
            Dimensions =
            [
                .. test
                    .Stages.SelectMany(s => test.Places(s, plan))
                    .Select(p => Dimension(plan, p)),
            ],
            Chart = WeldTrace.Documents.Drawings.LadderSchedule.Of(plan, test),
            Verdict = PrintedMarks.Of(
                DomainMarks.Of(test.Verdict),
                TestRecord.VerdictWord(test.Verdict)
            ),
            Explanation = test.VerdictSentence,
            Superseded = Withdrawals.Of(test),
        };
    }

    private static IEnumerable<LabelledValue> Burst(PressureTest test) =>
        test
            .Stages.Select(s => s.Reading.Burst)
            .OfType<BurstReading>()
            .SelectMany(b =>
                new LabelledValue[]
                {
                    new("Burst at", $"{b.Pressure}, rise in the minute before {b.RatePerMinute}"),
                    new(
                        "Origin",
                        $"{BurstReading.ZoneWord(b.Origin)}{(b.JointCode is { } j ? $", joint {j}" : "")}"
                    ),
                    new("Path", b.Path),
                }
            );

    private static string Text(PlanDeparture departure) =>
        departure.Decision is { } decision
            ? $"{departure.Sentence} {departure.DecisionWord}, decided by {decision.By}: {decision.Reason}"
            : $"{departure.Sentence} Not decided.";

    private static PressureStageLine Stage(PressurePlan plan, StageResult result) =>
        new(result.Stage.Name, plan.Target(result.Stage))
        {
            Hold = TimeSpan.FromSeconds(result.Reading.HeldSeconds),
            AtStart = Bar(result.Reading.StartPressure ?? result.Reading.Burst?.Pressure),
            AtEnd = Bar(result.Reading.EndPressure),
            Temperature = result.Reading.EndTemperature is { } t
                ? Temperature.FromDegreesCelsius(t.InUnit())
                : null,
            Verdict = PrintedMarks.Of(
                DomainMarks.Of(result.Verdict),
                TestRecord.VerdictWord(result.Verdict)
            ),
        };

    private static DimensionLine Dimension(PressurePlan plan, PlaceResult result)
    {
        var place = result.Place;
        // A strain of one µm/m over L is a set of L/1e6.
        var allowed = plan.AllowedPermanentSet.Millimetres;
        var limit = place.StrainLength is { } over ? allowed / over.InUnit() * 1e6 : allowed;
        return new DimensionLine(place.Name, place.Before.Unit)
        {
            Before = place.Before.Digits,
            After = result.After.Digits,
            Change = Texts.Number(result.After.InUnit() - place.Before.InUnit(), 3),
            Limit = Texts.Number(limit, 3),
            Verdict = PrintedMarks.Of(
                DomainMarks.Of(result.Verdict),
                TestRecord.VerdictWord(result.Verdict)
            ),
        };
    }

    private static Pressure? Bar(Domain.Records.Measured? measured) =>
        measured is null ? null : Pressure.FromBar(measured.InUnit());
}
