using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Lots;

/// <summary>What a vessel is sacrificed for.</summary>
public enum SampleKind
{
    /// <summary>Cut, photographed and measured.</summary>
    Section,

    /// <summary>Pressurised until it bursts.</summary>
    Burst,
}

/// <summary>How the serials of the samples are found.</summary>
public enum SampleChoice
{
    /// <summary>The lowest serials of the lot.</summary>
    First,

    /// <summary>The highest serials of the lot.</summary>
    Last,

    /// <summary>Drawn from the identity of the lot, so that nobody picks and everybody can draw again.</summary>
    Drawn,

    /// <summary>Named by the inspector, who says why.</summary>
    Named,
}

/// <summary>One kind of destructive sample that a design asks of each lot.</summary>
/// <param name="Kind">What the vessel is sacrificed for.</param>
/// <param name="Count">Vessels of a lot; 1 to 20.</param>
/// <param name="Choice">How they are chosen.</param>
public sealed record SampleDemand(SampleKind Kind, int Count, SampleChoice Choice);

/// <summary>The destructive samples that a design asks of each production lot, and what is stated from them.</summary>
/// <param name="Demands">Kinds and numbers; at least one, each kind once.</param>
/// <param name="Source">Design specification or standard that asks for them, with its edition.</param>
/// <param name="Coverage">Part of the vessels that the burst statement speaks of, above 0.5 and below 1.</param>
/// <param name="Confidence">Confidence of the statements, above 0.5 and below 1.</param>
/// <param name="BurstFactor">Least burst pressure as a multiple of the maximum expected operating pressure; above 1. Null when no burst is asked for.</param>
public sealed record SamplePlan(
    IReadOnlyList<SampleDemand> Demands,
    string Source,
    decimal Coverage,
    decimal Confidence,
    decimal? BurstFactor
)
{
    private const int MostOfAKind = 20;
    private const decimal LargestShare = 0.9999m;

    /// <summary>Vessels that a lot gives up.</summary>
    public int Count => Demands.Sum(d => d.Count);

    /// <summary>Least burst pressure, gauge; null when no burst is asked for.</summary>
    /// <param name="meop">Maximum expected operating pressure, gauge.</param>
    public Pressure? LeastBurst(Pressure meop) =>
        BurstFactor is { } factor ? meop * (double)factor : null;

    /// <summary>The words for a kind of sample.</summary>
    public static string KindWord(SampleKind kind) =>
        kind switch
        {
            SampleKind.Section => "section",
            SampleKind.Burst => "burst",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown sample."),
        };

    /// <summary>The words for how samples are chosen.</summary>
    public static string ChoiceWord(SampleChoice choice) =>
        choice switch
        {
            SampleChoice.First => "the lowest serials",
            SampleChoice.Last => "the highest serials",
            SampleChoice.Drawn => "drawn by lot",
            SampleChoice.Named => "named by the inspector, with a reason",
            _ => throw new ArgumentOutOfRangeException(nameof(choice), choice, "Unknown choice."),
        };

    internal void Check(Checks checks)
    {
        checks
            .That(
                Demands.Count > 0 && Demands.DistinctBy(d => d.Kind).Count() == Demands.Count,
                "samples",
                "Name each kind of destructive sample once, and at least one.",
                nameof(Demands)
            )
            .That(
                Demands.All(d => d.Count is > 0 and <= MostOfAKind),
                "samples",
                $"Give 1 to {MostOfAKind} samples of each kind.",
                nameof(Demands)
            )
            .Text(Source, 200, "Say which specification asks for the samples", "SamplesSource");
        CheckShare(checks, Coverage, "Coverage of the burst statement", nameof(Coverage));
        CheckShare(checks, Confidence, "Confidence of the statements", nameof(Confidence));
        checks.That(
            Demands.Any(d => d.Kind == SampleKind.Burst)
                ? BurstFactor is > 1 and <= 20
                : BurstFactor is null,
            "burst",
            "Give the least burst pressure as a multiple of the operating pressure, above 1 and at most 20, when burst samples are asked for, and only then.",
            nameof(BurstFactor)
        );
    }

    private static void CheckShare(Checks checks, decimal share, string what, string field) =>
        checks.That(
            share is > 0.5m and <= LargestShare,
            "share",
            $"{what}: give more than 50 % and at most 99.99 %.",
            field
        );
}
