using WeldTrace.Domain.Compliance;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Reading;

/// <summary>The shape that stands for each state of the records.</summary>
public static class DomainMarks
{
    public static Mark Of(StepState state) =>
        state switch
        {
            StepState.Waiting => Mark.Waiting,
            StepState.Ready => Mark.Ready,
            StepState.InProgress => Mark.InProgress,
            StepState.Passed => Mark.Passed,
            StepState.Failed => Mark.Failed,
            StepState.Waived => Mark.Waived,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(ComplianceState state) =>
        state switch
        {
            ComplianceState.NotApplicable => Mark.Ended,
            ComplianceState.Shown => Mark.Passed,
            ComplianceState.Partly => Mark.Warning,
            ComplianceState.NotShown => Mark.Failed,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    public static Mark Of(VesselState state) =>
        state switch
        {
            VesselState.Planned => Mark.Waiting,
            VesselState.InWork => Mark.InProgress,
            VesselState.OnHold => Mark.Held,
            VesselState.Accepted => Mark.Passed,
            VesselState.Shipped => Mark.Ended,
            VesselState.Expended => Mark.Ended,
            VesselState.Scrapped => Mark.Failed,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(ProcedureState state) =>
        state switch
        {
            ProcedureState.Draft => Mark.Draft,
            ProcedureState.Trial => Mark.Trial,
            ProcedureState.Qualified => Mark.Ready,
            ProcedureState.Released => Mark.Passed,
            ProcedureState.Superseded or ProcedureState.Withdrawn => Mark.Ended,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(QualificationState state) =>
        state switch
        {
            QualificationState.Open => Mark.InProgress,
            QualificationState.Signed => Mark.Passed,
            QualificationState.Abandoned => Mark.Ended,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(TestPieceState state) =>
        state switch
        {
            TestPieceState.Welding => Mark.InProgress,
            TestPieceState.Welded => Mark.Passed,
            TestPieceState.Discarded => Mark.Failed,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(PlannedTestState state) =>
        state switch
        {
            PlannedTestState.Missing => Mark.Waiting,
            PlannedTestState.NeedsReplacements => Mark.Warning,
            PlannedTestState.Passed => Mark.Passed,
            PlannedTestState.Failed => Mark.Failed,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(DesignState state) =>
        state switch
        {
            DesignState.Draft => Mark.Draft,
            DesignState.Released => Mark.Passed,
            DesignState.Superseded => Mark.Ended,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(FindingState state) =>
        state switch
        {
            FindingState.Open => Mark.Held,
            FindingState.Disposed => Mark.InProgress,
            FindingState.Closed => Mark.Ended,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(ToolState state) =>
        state switch
        {
            ToolState.InStore => Mark.Waiting,
            ToolState.InService => Mark.Ready,
            ToolState.Held => Mark.Held,
            ToolState.Retired => Mark.Ended,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(MachineState state) =>
        state switch
        {
            MachineState.InUse => Mark.Ready,
            MachineState.NeedsReproducibilityTest => Mark.Trial,
            MachineState.Locked => Mark.Held,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(MaintenanceStanding standing) =>
        standing switch
        {
            MaintenanceStanding.Done => Mark.Passed,
            MaintenanceStanding.Soon => Mark.Ready,
            MaintenanceStanding.Overdue => Mark.Warning,
            MaintenanceStanding.Locking => Mark.Held,
            _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, null),
        };

    public static Mark Of(LotState state) =>
        state switch
        {
            LotState.Gathering => Mark.Waiting,
            LotState.Sampling => Mark.InProgress,
            LotState.Failed => Mark.Failed,
            LotState.Accepted => Mark.Passed,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(WeldRunState state) =>
        state switch
        {
            WeldRunState.Running => Mark.InProgress,
            WeldRunState.Ended => Mark.Passed,
            WeldRunState.Interrupted => Mark.Failed,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    public static Mark Of(RuleStanding standing) =>
        standing switch
        {
            RuleStanding.Holds => Mark.Passed,
            RuleStanding.Forbids => Mark.Failed,
            RuleStanding.Waived => Mark.Waived,
            _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, null),
        };

    public static Mark Of(ConcessionState state) =>
        state switch
        {
            ConcessionState.Asked => Mark.InProgress,
            ConcessionState.Granted => Mark.Waived,
            ConcessionState.Declined => Mark.Ended,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
        };

    /// <summary>The shape of a test's verdict; none yet while readings are missing.</summary>
    public static Mark Of(Verdict? verdict) =>
        verdict switch
        {
            null => Mark.InProgress,
            Verdict.Pass => Mark.Passed,
            Verdict.Fail => Mark.Failed,
            Verdict.Undecided => Mark.Undecided,
            _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, null),
        };
}
