using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.ProductionTesting;

/// <summary>What happened on a machine, by one procedure number, since its last production test.</summary>
/// <param name="Last">Newest production test on the machine to the procedure's revision; null when there was none.</param>
/// <param name="Welded">Length welded on the machine since then.</param>
/// <param name="FirstRunAt">UTC instant of the first run since then; null when there was none.</param>
/// <param name="FoundSince">Where findings of those runs came from.</param>
public sealed record ProductionSince(
    ProductionTest? Last,
    Length Welded,
    DateTimeOffset? FirstRunAt,
    IReadOnlyCollection<FindingOrigin> FoundSince
);

/// <summary>Whether a production test is due (Class rules Ch. 13 9.2.3; the numbers are those of the design).</summary>
public static class ProductionTestDue
{
    private const double Soon = 0.8;

    /// <summary>Why a test is due before the next run; empty when none is.</summary>
    /// <param name="rule">Rule of the design.</param>
    /// <param name="since">What happened since the last test.</param>
    /// <param name="machine">Machine.</param>
    /// <param name="toolId">Tool that the next run takes; null when it isn't chosen yet.</param>
    /// <param name="now">UTC instant.</param>
    public static IReadOnlyList<string> Reasons(
        ProductionTestRule rule,
        ProductionSince since,
        Machine machine,
        Guid? toolId,
        DateTimeOffset now
    )
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(since);
        ArgumentNullException.ThrowIfNull(machine);
        if (since.Last is not { } last)
        {
            return ["no production test is recorded on this machine to this procedure revision"];
        }

        return [.. All(rule, since, last, machine, toolId, now)];
    }

    /// <summary>Part of the length or time between two tests that is used up; 0 when neither is limited.</summary>
    public static double Used(ProductionTestRule rule, ProductionSince since, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(since);
        var byLength = rule.EveryWelded is { } every ? since.Welded / every : 0;
        var byTime =
            rule.EveryHours is { } hours && since.FirstRunAt is { } first
                ? (now - first).TotalHours / hours
                : 0;
        return Math.Max(byLength, byTime);
    }

    /// <summary>Whether most of the length or time is used up.</summary>
    public static bool IsSoon(ProductionTestRule rule, ProductionSince since, DateTimeOffset now) =>
        Used(rule, since, now) >= Soon;

    /// <summary>Floor rule F21 before a weld; null when the design asks for no production tests.</summary>
    public static RuleVerdict? ForWelding(WeldGateFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (
            facts.Design.Content.ProductionTests is not { } rule
            || facts.Machine is not { } machine
            || facts.Production is not { } since
        )
        {
            return null;
        }

        var due = Reasons(rule, since, machine, facts.Tool?.Id, facts.Now);
        return new(
            "F21",
            "Production tests",
            due.Count == 0 ? RuleStanding.Holds : RuleStanding.Forbids,
            due.Count == 0
                ? FormattableString.Invariant(
                    $"The last production test on {machine.Name} was {since.Last!.Mark}; {since.Welded.Metres:0.0} m are welded since."
                )
                : $"A production test on {machine.Name} is due: {string.Join("; ", due)}. Weld one ({rule.Asks}) and have it recorded.",
            rule.Source
        );
    }

    private static IEnumerable<string> All(
        ProductionTestRule rule,
        ProductionSince since,
        ProductionTest last,
        Machine machine,
        Guid? toolId,
        DateTimeOffset now
    )
    {
        if (!last.HasPassed)
        {
            yield return $"the last one, {last.Mark}, did not pass";
        }

        if (rule.EveryWelded is { } every && since.Welded >= every)
        {
            yield return FormattableString.Invariant(
                $"{since.Welded.Metres:0.0} m are welded since the last, and one is due every {every.Metres:0.#} m"
            );
        }

        if (
            rule.EveryHours is { } hours
            && since.FirstRunAt is { } first
            && (now - first).TotalHours >= hours
        )
        {
            yield return FormattableString.Invariant(
                $"{(now - first).TotalHours:0.0} h of production passed since the last, and one is due every {hours} h"
            );
        }

        if (rule.AfterToolChange && toolId is { } tool && tool != last.ToolId)
        {
            yield return $"another tool is taken than {last.ToolMark}";
        }

        if (
            rule.AfterMachineWork
            && (machine.Events ?? []).Any(e => e.At > last.At && IsWork(e.Kind))
        )
        {
            yield return "the machine was worked on since the last";
        }

        foreach (var reason in Found(rule, since))
        {
            yield return reason;
        }
    }

    private static IEnumerable<string> Found(ProductionTestRule rule, ProductionSince since)
    {
        if (
            rule.AfterDeviation
            && since.FoundSince.Any(o =>
                o is FindingOrigin.Excursion or FindingOrigin.InterruptedRun
            )
        )
        {
            yield return "a run since the last left its windows or was interrupted";
        }

        if (
            rule.AfterDefect
            && since.FoundSince.Any(o =>
                o
                    is FindingOrigin.Examination
                        or FindingOrigin.LeakTest
                        or FindingOrigin.PressureTest
            )
        )
        {
            yield return "an examination or test found a defect in what was welded since the last";
        }
    }

    private static bool IsWork(MachineEventKind kind) =>
        kind
            is MachineEventKind.Installed
                or MachineEventKind.Refurbished
                or MachineEventKind.CriticalRepair
                or MachineEventKind.OtherRepair
                or MachineEventKind.Moved
                or MachineEventKind.Dislodged;
}
