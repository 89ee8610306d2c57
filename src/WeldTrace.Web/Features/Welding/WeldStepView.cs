using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Web.Features.Welding;

/// <summary>What the page of a weld step shows.</summary>
public sealed record WeldStepView
{
    public required WeldGateFacts Facts { get; init; }

    /// <summary>Every rule, judged for the person, tool and machine.</summary>
    public required IReadOnlyList<RuleVerdict> Gate { get; init; }

    /// <summary>The checks before welding.</summary>
    public required IReadOnlyList<PreWeldCheck> Checks { get; init; }

    /// <summary>Tool design of the released procedure.</summary>
    public required ToolDesign? ToolDesign { get; init; }

    public Machine? Machine => Facts.Machine;

    public required IReadOnlyList<Machine> Machines { get; init; }

    /// <summary>Tools of the right design that are in service, the least used last.</summary>
    public required IReadOnlyList<Tool> Tools { get; init; }

    /// <summary>The run of this step or repair that is not signed yet.</summary>
    public WeldRun? Unsigned => Facts.Runs.FirstOrDefault(r => !r.IsSealed && IsOfThis(r));

    private bool IsOfThis(WeldRun run) =>
        Facts.Repair is { } repair
            ? run.Repair?.Finding.Id == repair.Id
            : run.Repair is null && run.StepSequence == Facts.Step.Sequence;

    public bool MayStart => Gate.All(v => v.Standing != RuleStanding.Forbids);
}
