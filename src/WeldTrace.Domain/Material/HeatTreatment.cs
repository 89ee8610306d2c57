using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Material;

/// <summary>What a heat treatment asks for.</summary>
/// <param name="Instruction">Number of the instruction or procedure that lays it down.</param>
/// <param name="Lower">Lowest temperature of the soak, in °C.</param>
/// <param name="Upper">Highest temperature of the soak, in °C; not below the lowest.</param>
/// <param name="ShortestMinutes">Shortest soak, in min; above zero.</param>
/// <param name="LongestMinutes">Longest soak, in min; not below the shortest.</param>
public sealed record HeatCycle(
    string Instruction,
    Measured Lower,
    Measured Upper,
    Measured ShortestMinutes,
    Measured LongestMinutes
);

/// <summary>What the furnace did.</summary>
/// <param name="Lowest">Lowest temperature read during the soak, in °C.</param>
/// <param name="Highest">Highest temperature read during the soak, in °C.</param>
/// <param name="Minutes">Length of the soak, in min.</param>
/// <param name="InstrumentMark">Instrument that read the temperature.</param>
public sealed record HeatRecord(
    Measured Lowest,
    Measured Highest,
    Measured Minutes,
    string InstrumentMark
);

/// <summary>A part that was in the furnace.</summary>
/// <param name="Id">Component or vessel.</param>
/// <param name="Serial">Its serial.</param>
/// <param name="IsVessel">Whether it is a vessel.</param>
public sealed record TreatedPart(Guid Id, string Serial, bool IsVessel);

/// <summary>One furnace load: the cycle asked for, the cycle kept, and the parts treated (ISO 25239-5:2020 4.11).</summary>
public sealed class HeatTreatment : Record
{
    /// <summary>Longest furnace or number.</summary>
    public const int LongestText = 80;

    private const string Temperature = "°C";
    private const string Time = "min";
    private const string Source = "ISO 25239-5:2020 4.11";

    private HeatTreatment(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "heat-treatment";

    /// <inheritdoc/>
    public override string Label => Number;

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels =>
        [.. Parts.Where(p => p.IsVessel).Select(p => p.Id)];

    /// <summary>Number of the furnace load; unique.</summary>
    public string Number { get; private set; } = "";

    /// <summary>Furnace.</summary>
    public string Furnace { get; private set; } = "";

    /// <summary>Day.</summary>
    public DateOnly On { get; private set; }

    /// <summary>What was asked for.</summary>
    public HeatCycle Asked { get; private set; } = null!;

    /// <summary>What the furnace did.</summary>
    public HeatRecord Kept { get; private set; } = null!;

    /// <summary>SHA-256 of the furnace's chart.</summary>
    public string ChartSha256 { get; private set; } = "";

    /// <summary>Parts treated.</summary>
    public IReadOnlyList<TreatedPart> Parts { get; private set; } = [];

    /// <summary>Whether the cycle was kept.</summary>
    public bool IsKept { get; private set; }

    /// <summary>The verdict in words.</summary>
    public string Verdict { get; private set; } = "";

    /// <summary>Printed name of whoever entered it.</summary>
    public string EnteredByName { get; private set; } = "";

    /// <summary>Enters a furnace load.</summary>
    /// <param name="number">Number of the load; 1 to 80 characters.</param>
    /// <param name="furnace">Furnace; 1 to 80 characters.</param>
    /// <param name="on">Day; not in the future.</param>
    /// <param name="asked">What was asked for.</param>
    /// <param name="kept">What the furnace did.</param>
    /// <param name="instrument">Instrument of the typed mark; null when there is none.</param>
    /// <param name="chartSha256">The furnace's chart; needed.</param>
    /// <param name="parts">Parts treated; at least one.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Who enters it.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<HeatTreatment> Enter(
        string number,
        string furnace,
        DateOnly on,
        HeatCycle asked,
        HeatRecord kept,
        Instrument? instrument,
        string? chartSha256,
        IReadOnlyList<TreatedPart> parts,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(kept);
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = CheckLoad(number, furnace, on, chartSha256, parts, today, actor);
        CheckCycle(checks, asked);
        CheckRecord(checks, kept);
        checks.Add(
            InstrumentRules.Check(
                instrument,
                kept.InstrumentMark,
                InstrumentKind.Temperature,
                null,
                Temperature,
                today,
                nameof(HeatRecord.InstrumentMark)
            )
        );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var (isKept, verdict) = Judge(asked, kept);
        var treatment = new HeatTreatment(Guid.CreateVersion7(at))
        {
            Number = number.Trim(),
            Furnace = furnace.Trim(),
            On = on,
            Asked = asked,
            Kept = kept,
            ChartSha256 = chartSha256!,
            Parts = [.. parts.DistinctBy(p => p.Id)],
            IsKept = isKept,
            Verdict = verdict,
            EnteredByName = actor.PrintedName,
        };
        treatment.Note(actor, at, "heat treatment entered", verdict);
        return treatment;
    }

    private static Checks CheckLoad(
        string number,
        string furnace,
        DateOnly on,
        string? chartSha256,
        IReadOnlyList<TreatedPart> parts,
        DateOnly today,
        Actor actor
    ) =>
        new Checks()
            .Role(actor, Role.Engineer, Role.Operator, Role.Inspector, Role.QualityManager)
            .Text(number, LongestText, "Give the number of the furnace load", nameof(Number))
            .Text(furnace, LongestText, "Name the furnace", nameof(Furnace))
            .That(
                on <= today,
                "future",
                "The day of the treatment lies in the future; check it.",
                nameof(On)
            )
            .That(
                chartSha256 is not null,
                "file",
                "Hand in the furnace's chart; the record must show that the cycle was kept.",
                "File",
                Source
            )
            .That(
                parts.Count > 0,
                "parts",
                "Name the components or vessels that were in the furnace.",
                nameof(Parts),
                Source
            );

    private static (bool IsKept, string Verdict) Judge(HeatCycle asked, HeatRecord kept)
    {
        string?[] against =
        [
            kept.Lowest.InUnit() < asked.Lower.InUnit()
                ? $"{kept.Lowest} is below the {asked.Lower} asked for."
                : null,
            kept.Highest.InUnit() > asked.Upper.InUnit()
                ? $"{kept.Highest} is above the {asked.Upper} asked for."
                : null,
            kept.Minutes.InUnit() < asked.ShortestMinutes.InUnit()
                ? $"{kept.Minutes} is shorter than the {asked.ShortestMinutes} asked for."
                : null,
            kept.Minutes.InUnit() > asked.LongestMinutes.InUnit()
                ? $"{kept.Minutes} is longer than the {asked.LongestMinutes} asked for."
                : null,
        ];
        var missed = against.OfType<string>().ToList();
        return missed.Count == 0
            ? (true, "The cycle was kept.")
            : (false, $"The cycle was not kept: {string.Join(" ", missed)}");
    }

    private static void CheckCycle(Checks checks, HeatCycle asked) =>
        checks
            .Text(
                asked.Instruction,
                LongestText,
                "Name the instruction that lays the cycle down",
                nameof(asked.Instruction)
            )
            .That(
                asked.Lower.Unit == Temperature
                    && asked.Upper.Unit == Temperature
                    && asked.Lower.InUnit() <= asked.Upper.InUnit(),
                "cycle",
                "Give the temperatures asked for in °C, the lowest first.",
                nameof(asked.Lower)
            )
            .That(
                asked.ShortestMinutes.Unit == Time
                    && asked.LongestMinutes.Unit == Time
                    && asked.ShortestMinutes.InUnit() > 0
                    && asked.ShortestMinutes.InUnit() <= asked.LongestMinutes.InUnit(),
                "cycle",
                "Give the times asked for in min, above zero, the shortest first.",
                nameof(asked.ShortestMinutes)
            );

    private static void CheckRecord(Checks checks, HeatRecord kept) =>
        checks
            .That(
                kept.Lowest.Unit == Temperature
                    && kept.Highest.Unit == Temperature
                    && kept.Lowest.InUnit() <= kept.Highest.InUnit(),
                "kept",
                "Give the temperatures read in °C, the lowest first.",
                nameof(kept.Lowest)
            )
            .That(
                kept.Minutes.Unit == Time && kept.Minutes.InUnit() > 0,
                "kept",
                "Give the length of the soak in min, above zero.",
                nameof(kept.Minutes)
            );
}
