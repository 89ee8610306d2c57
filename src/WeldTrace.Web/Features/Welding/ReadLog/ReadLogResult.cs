using WeldTrace.Domain.Records;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.Features.Welding.ReadLog;

/// <summary>What came of taking a log: done, refused, or full of problems that stand in the file.</summary>
/// <param name="Outcome">Accepted, or every reason against it.</param>
/// <param name="Problems">What is wrong in the file, line by line.</param>
public sealed record ReadLogResult(Outcome Outcome, IReadOnlyList<LogProblem> Problems)
{
    public bool IsAccepted => Outcome.IsAccepted && Problems.Count == 0;
}
