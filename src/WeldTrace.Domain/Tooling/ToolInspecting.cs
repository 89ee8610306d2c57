using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Conformity;
using Measured = WeldTrace.Domain.Records.Measured;
using MeasuredValue = WeldTrace.Engineering.Conformity.Measured;

namespace WeldTrace.Domain.Tooling;

/// <summary>What was measured on a pin, as typed.</summary>
/// <param name="PinLength">Length, in mm.</param>
/// <param name="PinDiameter">Diameter at the root, in mm.</param>
/// <param name="Instrument">Instrument; null when none has the typed mark.</param>
/// <param name="TypedMark">Mark as typed.</param>
public sealed record PinReading(
    Measured PinLength,
    Measured PinDiameter,
    Instrument? Instrument,
    string TypedMark
);

/// <summary>An inspection as it is handed in.</summary>
/// <param name="Kind">Why the tool was looked at.</param>
/// <param name="IsGood">Whether it looked good; a reading outside the limits overrules it.</param>
/// <param name="Remark">What was seen; may be empty when it looked good.</param>
/// <param name="Reading">What was measured; needed for a wear inspection.</param>
/// <param name="FileSha256">A picture or paper; null when there is none.</param>
public sealed record InspectionEntry(
    ToolInspectionKind Kind,
    bool IsGood,
    string Remark,
    PinReading? Reading,
    string? FileSha256
);

public sealed partial class Tool
{
    /// <summary>Whether the tool, or its pin, was checked before its first use.</summary>
    public bool HasFirstUseCheck =>
        OfPin.Any(i => i is { Kind: ToolInspectionKind.FirstUse, IsGood: true });

    /// <summary>The last inspection at which the pin was measured; null before the first.</summary>
    public ToolInspection? LatestMeasured => OfPin.LastOrDefault(i => i.Measured is not null);

    /// <summary>The last good inspection from which the wear interval counts: a wear inspection or the first-use check.</summary>
    public ToolInspection? LatestForWear =>
        OfPin.LastOrDefault(i => i.IsGood && i.Kind != ToolInspectionKind.Cleaned);

    /// <summary>Whether it was cleaned or inspected, with a good verdict, since its last run.</summary>
    public bool IsCleanedSinceLastUse =>
        Inspections is [.., { IsGood: true } last] && last.AfterUses == Uses.Count;

    private IEnumerable<ToolInspection> OfPin =>
        (Inspections ?? []).Where(i => i.PinMark == Pin?.Mark);

    /// <summary>Records an inspection or cleaning; a tool in service that is not good is held by it.</summary>
    /// <param name="entry">What was found.</param>
    /// <param name="design">Design of the tool, with its wear limits.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Who inspected.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Inspect(
        InspectionEntry entry,
        ToolDesign design,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentOutOfRangeException.ThrowIfNotEqual(design.Id, DesignId);
        var checks = CheckInspection(entry, design, actor);
        if (entry.Reading is { } reading)
        {
            CheckReading(checks, reading, today);
        }

        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        var (isGood, text) = Judge(entry, design.Upkeep);
        Inspections =
        [
            .. Inspections ?? [],
            new(
                entry.Kind,
                today,
                at,
                Used,
                Uses.Count,
                design.Upkeep?.InspectionProcedure ?? "",
                isGood,
                text,
                actor.PrintedName,
                Measurement(entry.Reading),
                Pin?.Mark,
                entry.FileSha256
            ),
        ];
        Note(actor, at, $"tool: {ToolInspection.Word(entry.Kind)}", text);
        if (!isGood && State == ToolState.InService)
        {
            (State, HeldBecause) = (ToolState.Held, text);
            Note(actor, at, "tool held", text);
        }

        return Outcome.Accepted;
    }

    private Checks CheckInspection(InspectionEntry entry, ToolDesign design, Actor actor)
    {
        var isWear = entry.Kind == ToolInspectionKind.Wear;
        return new Checks()
            .Role(actor, Role.Engineer, Role.Operator, Role.Inspector, Role.QualityManager)
            .That(State != ToolState.Retired, "state", $"{Mark} is retired.")
            .That(
                entry.Remark.Length <= LongestReason,
                "remark",
                $"Keep the remark within {LongestReason} characters.",
                nameof(entry.Remark)
            )
            .That(
                entry.IsGood || !string.IsNullOrWhiteSpace(entry.Remark),
                "remark",
                "Say what is wrong with the tool.",
                nameof(entry.Remark)
            )
            .That(
                !isWear || design.Upkeep is not null,
                "limits",
                $"{design.Label} states no wear limits; the engineer lays them down on the design's page first."
            )
            .That(
                !isWear || entry.Reading is not null,
                "reading",
                "Measure the pin's length and diameter; a wear inspection needs both.",
                nameof(PinReading.PinLength)
            );
    }

    private static void CheckReading(Checks checks, PinReading reading, DateOnly today)
    {
        checks.Add(
            InstrumentRules.Check(
                reading.Instrument,
                reading.TypedMark,
                InstrumentKind.Length,
                null,
                ToolUpkeep.Unit,
                today,
                nameof(PinMeasurement.InstrumentMark)
            )
        );
        foreach (
            var (value, field) in new[]
            {
                (reading.PinLength, nameof(PinReading.PinLength)),
                (reading.PinDiameter, nameof(PinReading.PinDiameter)),
            }
        )
        {
            checks.That(
                value.Unit == ToolUpkeep.Unit && value.InUnit() > 0,
                "reading",
                "Give what was measured in mm, above zero.",
                field
            );
        }
    }

    private static (bool IsGood, string Text) Judge(InspectionEntry entry, ToolUpkeep? upkeep)
    {
        var seen = entry.Remark.Trim();
        if (entry.Reading is not { } reading || upkeep is null)
        {
            return (entry.IsGood, seen.Length > 0 ? seen : "No objection.");
        }

        Judgement[] judged =
        [
            Judge(reading.PinLength, upkeep.LeastPinLength, reading.Instrument!),
            Judge(reading.PinDiameter, upkeep.LeastPinDiameter, reading.Instrument!),
        ];
        var isWithin = judged.All(j => j.Verdict == Verdict.Pass);
        var text = $"Length: {judged[0].Sentence} Diameter: {judged[1].Sentence} {seen}".Trim();
        return (entry.IsGood && isWithin, text);
    }

    // The instrument's largest permitted error stands for the uncertainty: a reading that straddles the limit is no pass.
    private static Judgement Judge(Measured value, Measured least, Instrument instrument)
    {
        var error = new MeasuredValue(
            instrument.Text.LargestError.InUnit(),
            instrument.Text.Unit
        ).In(ToolUpkeep.Unit);
        return Comparison.AtLeast(
            new MeasuredValue(value.InUnit(), ToolUpkeep.Unit, Math.Abs(error.Value)),
            WrittenLimit.Parse(least.Digits, ToolUpkeep.Unit)
        );
    }

    private static PinMeasurement? Measurement(PinReading? reading) =>
        reading is { Instrument: { } instrument }
            ? new(reading.PinLength, reading.PinDiameter, instrument.Id, instrument.Mark)
            : null;
}
