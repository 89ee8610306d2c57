using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.Loading;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.Features.Welding;

/// <summary>A run with everything that its page shows.</summary>
public sealed record RunView
{
    public required RunRecords Records { get; init; }

    /// <summary>The log without its samples; null until it is in.</summary>
    public required LogHeader? Header { get; init; }

    /// <summary>SHA-256 of the original, or of its packed form, when it is kept beside the samples.</summary>
    public required string? OriginalAttachment { get; init; }

    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>What other records of the vessel say of places on this seam, in the order of the travel.</summary>
    public required IReadOnlyList<SeamIndication> Indications { get; init; }

    /// <summary>Reviews of signals that control charts showed of the run, oldest first.</summary>
    public required IReadOnlyList<SignalReview> SignalReviews { get; init; }

    public required IReadOnlyList<Signature> Signatures { get; init; }
}
