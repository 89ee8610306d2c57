using System.Security.Cryptography;
using System.Text;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Lots;

/// <summary>A serial that somebody names as a sample.</summary>
/// <param name="Kind">What for.</param>
/// <param name="Serial">Serial of the vessel.</param>
/// <param name="Reason">Why this one.</param>
public sealed record NamedSample(SampleKind Kind, string Serial, string Reason);

// Which serials are sacrificed, recorded before welding starts.
public sealed partial class ProductionLot
{
    /// <summary>What the signature under the choice means.</summary>
    public const string SamplingMeaning =
        "I choose these serials as the destructive samples of the lot, before any of its vessels is welded.";

    /// <summary>The samples that the design's way of choosing gives; those that are named stand as they are.</summary>
    /// <param name="named">Serials that the inspector names, where the design lets them be named.</param>
    /// <remarks>
    /// Drawing: vessels in the order of SHA-256 over the identity of the lot and the serial, so that anyone can draw again. Each vessel
    /// serves for one kind.
    /// </remarks>
    public IReadOnlyList<LotSample> Draw(IReadOnlyList<NamedSample> named)
    {
        ArgumentNullException.ThrowIfNull(named);
        List<LotSample> samples =
        [
            .. Plan
                .Demands.Where(d => d.Choice == SampleChoice.Named)
                .SelectMany(d => named.Where(n => n.Kind == d.Kind))
                .Select(n => (Named: n, Vessel: VesselOf(n.Serial)))
                .Where(n => n.Vessel is not null)
                .Select(n => new LotSample(
                    n.Named.Kind,
                    n.Vessel!.Id,
                    n.Vessel.Label,
                    SampleChoice.Named,
                    n.Named.Reason.Trim()
                )),
        ];
        foreach (var demand in Plan.Demands.Where(d => d.Choice != SampleChoice.Named))
        {
            samples.AddRange(
                InOrder(demand.Choice)
                    .Where(v => samples.All(s => s.VesselId != v.Id))
                    .Take(demand.Count)
                    .Select(v => new LotSample(demand.Kind, v.Id, v.Label, demand.Choice, null))
                    .ToList()
            );
        }

        return samples;
    }

    /// <summary>Chooses the samples; welding may start.</summary>
    /// <param name="named">Serials that the inspector names, where the design lets them be named.</param>
    /// <param name="vessels">All vessels of the lot.</param>
    /// <param name="design">Their design.</param>
    /// <param name="actor">Inspector or quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome ChooseSamples(
        IReadOnlyList<NamedSample> named,
        IReadOnlyList<Vessel> vessels,
        VesselDesign design,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(named);
        ArgumentNullException.ThrowIfNull(vessels);
        ArgumentNullException.ThrowIfNull(design);
        var samples = Draw(named);
        var welded = vessels.Where(v => v.HasWeldingBegun).Select(v => v.Serial).Order().ToList();
        var checks = new Checks()
            .Role(actor, Role.Inspector, Role.QualityManager)
            .That(
                State == LotState.Gathering,
                "state",
                $"The samples of lot {Number} are chosen already."
            )
            .That(
                welded.Count == 0,
                "welded",
                $"Welded on already: {string.Join(", ", welded)}. Samples are chosen before welding starts.",
                null,
                Source
            );
        CheckNamed(checks, named, samples);
        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        (Samples, State) = (samples, LotState.Sampling);
        (SampledBy, SampledAt) = (actor.PrintedName, at);
        Note(actor, at, "samples chosen", Words(samples));
        foreach (var vessel in vessels)
        {
            if (SampleOf(vessel.Id) is { } sample)
            {
                vessel.BecomeSample(this, sample, design, actor, at);
            }
        }

        return Outcome.Accepted;
    }

    private void CheckNamed(
        Checks checks,
        IReadOnlyList<NamedSample> named,
        IReadOnlyList<LotSample> samples
    )
    {
        foreach (var name in named)
        {
            checks
                .That(
                    VesselOf(name.Serial) is not null,
                    "serial",
                    $"Lot {Number} has no vessel {name.Serial}; choose one of its serials.",
                    nameof(Samples)
                )
                .Text(
                    name.Reason,
                    LongestText,
                    $"Say why {name.Serial} is chosen",
                    nameof(Samples)
                );
        }

        checks.That(
            samples.DistinctBy(s => s.VesselId).Count() == samples.Count,
            "serial",
            "A vessel serves for one kind of sample; name each serial once.",
            nameof(Samples)
        );
        foreach (var demand in Plan.Demands)
        {
            var count = samples.Count(s => s.Kind == demand.Kind);
            checks.That(
                count == demand.Count,
                "count",
                $"The design asks for {demand.Count} {SamplePlan.KindWord(demand.Kind)} sample{(demand.Count == 1 ? "" : "s")}; {count} {(count == 1 ? "is" : "are")} chosen.",
                nameof(Samples)
            );
        }
    }

    private RecordName? VesselOf(string? serial) =>
        Vessels.FirstOrDefault(v => v.Label == serial?.Trim());

    private IEnumerable<RecordName> InOrder(SampleChoice choice) =>
        choice switch
        {
            SampleChoice.Last => Vessels.Reverse(),
            SampleChoice.Drawn => Vessels.OrderBy(v => DrawnPlace(v.Label), StringComparer.Ordinal),
            _ => Vessels,
        };

    private string DrawnPlace(string serial) =>
        Convert.ToHexStringLower(
            SHA256.HashData(Encoding.UTF8.GetBytes($"{Id.ToString("D")} {serial}"))
        );

    private static string Words(IEnumerable<LotSample> samples) =>
        string.Join(", ", samples.Select(s => $"{s.Serial} for {SamplePlan.KindWord(s.Kind)}"));
}
