using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Welding;

/// <summary>What the charts said of a run when it was reviewed.</summary>
/// <param name="Parameter">Parameter.</param>
/// <param name="Mean">Mean of the run over the steady traverse, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit of the mean.</param>
/// <param name="Signals">What was seen; none is no signal.</param>
/// <param name="Runs">Number of runs that the charts were made of, 3 or more.</param>
/// <param name="SharedBy">What those runs share, for instance the machine.</param>
public sealed record SeenSignal(
    WeldParameter Parameter,
    decimal Mean,
    string Unit,
    IReadOnlyList<RunSignal> Signals,
    int Runs,
    string SharedBy
);

/// <summary>
/// A person looked for the cause of a signal across runs. It judges nothing: what it shows to be wrong with a vessel is a finding.
/// Never changed after it is made; who sees more later makes another.
/// </summary>
public sealed class SignalReview : Record
{
    /// <summary>Longest text.</summary>
    public const int LongestText = 1000;

    private SignalReview(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "signal-review";

    /// <inheritdoc/>
    public override string Label =>
        $"{RunLabel}: {ParameterNames.Of(Seen.Parameter)}, review of a signal";

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [VesselId];

    /// <inheritdoc/>
    public override bool IsSealed => Version > 0;

    /// <summary>Run that the signal speaks of.</summary>
    public Guid RunId { get; private set; }

    /// <summary>How a person names the run.</summary>
    public string RunLabel { get; private set; } = "";

    /// <summary>Its vessel.</summary>
    public Guid VesselId { get; private set; }

    /// <summary>What the charts said then.</summary>
    public SeenSignal Seen { get; private set; } = null!;

    /// <summary>What the review came to.</summary>
    public SignalConclusion Conclusion { get; private set; }

    /// <summary>What was looked at and what it showed.</summary>
    public string Text { get; private set; } = "";

    /// <summary>Finding that came of it; null when none did.</summary>
    public Guid? FindingId { get; private set; }

    /// <summary>Number of that finding.</summary>
    public int? FindingNumber { get; private set; }

    /// <summary>Printed name of the reviewer.</summary>
    public string ReviewerName { get; private set; } = "";

    /// <summary>UTC instant.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>Who may review a signal.</summary>
    public static IReadOnlyList<Role> Reviewers { get; } = [Role.Engineer, Role.QualityManager];

    /// <summary>Whether everything that the charts say of a run now was reviewed, by one or several reviews.</summary>
    /// <param name="reviews">Reviews of the run for the same parameter.</param>
    /// <param name="now">What the charts say now.</param>
    public static bool Cover(IEnumerable<SignalReview> reviews, IEnumerable<RunSignal> now)
    {
        ArgumentNullException.ThrowIfNull(reviews);
        return !now.Except(reviews.SelectMany(r => r.Seen.Signals)).Any();
    }

    /// <summary>Records a review.</summary>
    /// <param name="id">Identity, made when the form was opened, so that a form sent twice is one review.</param>
    /// <param name="run">Run.</param>
    /// <param name="seen">What the charts say of it.</param>
    /// <param name="conclusion">What the review came to.</param>
    /// <param name="text">What was looked at and what it showed; 1 to 1000 characters.</param>
    /// <param name="finding">Finding of the run's vessel that came of it; null when none did.</param>
    /// <param name="actor">Welding engineer or quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<SignalReview> Record(
        Guid id,
        WeldRun run,
        SeenSignal seen,
        SignalConclusion conclusion,
        string text,
        Finding? finding,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(seen);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Reviewers)
            .That(
                seen.Signals.Count > 0,
                "signal",
                $"The charts show no signal of {run.Label} among these runs; there is nothing to review."
            )
            .That(
                Enum.IsDefined(conclusion),
                "missing",
                "Say what the review came to.",
                nameof(Conclusion)
            )
            .Text(text, LongestText, "Say what was looked at and what it showed", nameof(Text))
            .That(
                finding is null || finding.VesselId == run.VesselId,
                "finding",
                $"The finding is of another vessel than {run.VesselSerial}; choose one of this vessel.",
                nameof(FindingId)
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var review = new SignalReview(id)
        {
            RunId = run.Id,
            RunLabel = run.Label,
            VesselId = run.VesselId,
            Seen = seen,
            Conclusion = conclusion,
            Text = text.Trim(),
            FindingId = finding?.Id,
            FindingNumber = finding?.Number,
            ReviewerName = actor.PrintedName,
            At = at,
        };
        review.Note(
            actor,
            at,
            $"signal across runs reviewed: {SignalWords.Of(conclusion)}",
            review.Text
        );
        return review;
    }
}
