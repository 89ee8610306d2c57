using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Page;

/// <summary>A record at a station of the seam line.</summary>
/// <param name="Record">The record.</param>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Address">Its page; null when it has none of its own.</param>
/// <param name="Mark">Shape of its state or verdict.</param>
/// <param name="Word">Its state or verdict in words.</param>
/// <param name="Sentence">What it says, in a sentence.</param>
/// <param name="IsPaper">Whether the address is of a file.</param>
public sealed record StationRecord(
    Record Record,
    string Title,
    string? Address,
    Mark Mark,
    string Word,
    string Sentence,
    bool IsPaper = false
);

/// <summary>What was recorded at each step.</summary>
public static class StationRecords
{
    public static IReadOnlyList<StationRecord> At(VesselHistory history, RouteStep step)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(step);
        return
        [
            .. history.Runs.Where(r => r.StepSequence == step.Sequence).Select(Of),
            .. history
                .LeakTests.Where(t => t.StepSequence == step.Sequence)
                .Select(t => Of(t, LeakTitle(t), Routes.LeakTest(t.Id))),
            .. history
                .PressureTests.Where(t => t.StepSequence == step.Sequence)
                .Select(t => Of(t, "Pressure test", Routes.PressureTest(t.Id))),
            .. history
                .Sections.Where(t => t.StepSequence == step.Sequence)
                .Select(t => Of(t, SectionTitle(t), Routes.Section(t.Id))),
            .. history
                .SignOffs.Where(s => s.StepSequence == step.Sequence)
                .Select(s => new StationRecord(
                    s,
                    s.Examination is { } report ? report.Title : "Sign-off",
                    s.Examination is null ? null : Routes.ExaminationPaper(s.Id),
                    s.Examination is { Rejected.Count: > 0 } ? Mark.Failed : Mark.Passed,
                    s.Examination is { Rejected.Count: > 0 } ? "signed, rejected" : "signed",
                    s.Text,
                    IsPaper: true
                )),
        ];
    }

    private static StationRecord Of(WeldRun run)
    {
        var travelled = run.Travelled is { } length
            ? FormattableString.Invariant($", {length.Metres:0.000} m travelled")
            : "";
        var excursions = run.Log is { Excursions.Count: > 0 and var count }
            ? $", {count} excursion{(count == 1 ? "" : "s")}"
            : "";
        return new(
            run,
            run.Repair is { } repair ? $"Repair weld, {repair.Finding.Label}" : "Weld run",
            Routes.Run(run.Id),
            DomainMarks.Of(run.State),
            WeldRun.StateWord(run.State) + (run.IsSealed ? ", signed" : ", not signed"),
            $"{run.OperatorName} on {run.MachineName} with tool {run.ToolMark}, {run.ProcedureLabel}{travelled}{excursions}."
        );
    }

    private static StationRecord Of(TestRecord test, string title, string address) =>
        test.Withdrawal is { } withdrawal
            ? new(
                test,
                title,
                address,
                Mark.Ended,
                "withdrawn",
                $"Withdrawn by {withdrawal.PrintedName}: {withdrawal.Reason}"
            )
            : new(
                test,
                title,
                address,
                DomainMarks.Of(test.Verdict),
                TestRecord.VerdictWord(test.Verdict),
                test.VerdictSentence
            );

    private static string LeakTitle(LeakTest test) =>
        test.Method == LeakMethod.PressureDecay
            ? "Pressure-decay leak test"
            : "Immersion bubble test";

    private static string SectionTitle(SectionExamination section) =>
        FormattableString.Invariant(
            $"Section of {section.Cut.JointCode} at {section.Cut.Angle.Degrees:0}°"
        );
}
