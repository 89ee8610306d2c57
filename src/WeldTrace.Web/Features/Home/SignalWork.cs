using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Features.Home;

/// <summary>Signals across runs that nobody has looked into.</summary>
internal static class SignalWork
{
    public static async Task<IEnumerable<WaitingWork>> ReadAsync(
        SignalWatch watch,
        Actor actor,
        CancellationToken cancellation
    ) =>
        actor.HasAny([.. SignalReview.Reviewers])
            ? (await watch.FindUnreviewedAsync(cancellation)).Select(s => new WaitingWork(
                Urgency.Ready,
                Mark.Warning,
                "to review",
                $"Signals across runs not reviewed: {s.Runs} ({ParameterNames.Of(s.Parameter)}, {s.Label})",
                Routes.AcrossRunsOf(s.RevisionId, s.Parameter)
            ))
            : [];
}
