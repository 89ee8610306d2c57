using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;

namespace WeldTrace.Domain.ProductionTesting;

/// <summary>A test weld of running production, examined and signed. Never changed after it is made.</summary>
public sealed class ProductionTest : Record
{
    /// <summary>Longest text.</summary>
    public const int LongestText = 1000;

    /// <summary>What the signature means.</summary>
    public const string Meaning = "I examined this production test; the result is as stated.";

    private ProductionTest(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "production-test";

    /// <inheritdoc/>
    public override string Label => $"{Mark} on {MachineName}";

    /// <inheritdoc/>
    public override bool IsSealed => Version > 0;

    /// <summary>Mark of the test weld.</summary>
    public string Mark { get; private set; } = "";

    /// <summary>Machine it was welded on.</summary>
    public Guid MachineId { get; private set; }

    /// <summary>Name of the machine.</summary>
    public string MachineName { get; private set; } = "";

    /// <summary>Procedure revision it was welded to.</summary>
    public Guid ProcedureRevisionId { get; private set; }

    /// <summary>Number and revision of the procedure.</summary>
    public string ProcedureLabel { get; private set; } = "";

    /// <summary>Tool it was welded with.</summary>
    public Guid ToolId { get; private set; }

    /// <summary>Mark of the tool.</summary>
    public string ToolMark { get; private set; } = "";

    /// <summary>What was examined and found.</summary>
    public string Result { get; private set; } = "";

    /// <summary>Whether it met the limits of the procedure.</summary>
    public bool HasPassed { get; private set; }

    /// <summary>Printed name of whoever examined it.</summary>
    public string InspectorName { get; private set; } = "";

    /// <summary>UTC instant from which production counts anew.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>Records a production test.</summary>
    /// <param name="mark">Mark of the test weld; 1 to 40 characters.</param>
    /// <param name="machine">Machine.</param>
    /// <param name="procedure">Procedure revision.</param>
    /// <param name="tool">Tool.</param>
    /// <param name="result">What was examined and found; 1 to 1000 characters.</param>
    /// <param name="hasPassed">Whether it met the limits.</param>
    /// <param name="examiner">Certificates of whoever examined it.</param>
    /// <param name="actor">Inspector.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<ProductionTest> Record(
        string mark,
        Machine machine,
        ProcedureRevision procedure,
        Tool tool,
        string result,
        bool hasPassed,
        ExaminerFacts examiner,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(machine);
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentNullException.ThrowIfNull(examiner);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.Inspector)
            .Add(examiner.Against(ExaminationMethod.Visual))
            .Text(mark, 40, "Give the mark of the test weld", nameof(Mark))
            .Text(result, LongestText, "Say what was examined and found", nameof(Result));
        CheckWelded(checks, procedure, tool);
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var test = new ProductionTest(Guid.CreateVersion7(at))
        {
            Mark = mark.Trim(),
            MachineId = machine.Id,
            MachineName = machine.Name,
            ProcedureRevisionId = procedure.Id,
            ProcedureLabel = procedure.Label,
            ToolId = tool.Id,
            ToolMark = tool.Mark,
            Result = result.Trim(),
            HasPassed = hasPassed,
            InspectorName = actor.PrintedName,
            At = at,
        };
        test.Note(
            actor,
            at,
            hasPassed ? "production test passed" : "production test failed",
            test.Result
        );
        return test;
    }

    private static void CheckWelded(Checks checks, ProcedureRevision procedure, Tool tool) =>
        checks
            .That(
                procedure.State == ProcedureState.Released,
                "procedure",
                $"{procedure.Label} is {ProcedureRevision.StateWord(procedure.State)}; a production test is welded to a released procedure.",
                nameof(ProcedureRevisionId)
            )
            .That(
                tool.DesignId == procedure.Content.ToolDesignId,
                "tool",
                $"Tool {tool.Mark} is not of the design that {procedure.Label} names; choose the tool that welded it.",
                nameof(ToolId)
            );
}
