using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Features.Testing;

/// <summary>What is said when a vessel or a step of its route does not exist.</summary>
internal static class StepNotFound
{
    public static Outcome Outcome(string serial, int sequence) =>
        Domain.Records.Outcome.Refused(
            "missing",
            FormattableString.Invariant(
                $"There is no vessel {serial} with a step {sequence}. Look for it in the list of vessels."
            )
        );
}
