using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Certification;

internal static class ScopeChecks
{
    private const int LongestWait = 24;

    public static void Check(this OperatorScope scope, Checks checks) =>
        checks
            .Text(
                scope.ProcedureLabel,
                Certificate.LongestText,
                "Name the procedure of the test weld",
                nameof(scope.ProcedureLabel)
            )
            .Text(
                scope.Variables,
                Certificate.LongestReason,
                "Give the variables of the test weld",
                nameof(scope.Variables)
            )
            .Text(
                scope.ControlMode,
                Certificate.LongestText,
                "Give the control mode",
                nameof(scope.ControlMode)
            )
            .That(
                scope.JointTypes.Count > 0 && scope.JointTypes.All(j => j.Length is > 0 and <= 60),
                "joint-types",
                "Name at least one joint type that it covers.",
                nameof(scope.JointTypes)
            )
            .That(
                scope.ConfirmEveryMonths is >= 1 and <= LongestWait,
                "interval",
                $"Give the months between confirmations, 1 to {LongestWait}.",
                nameof(scope.ConfirmEveryMonths)
            )
            .That(
                scope.TestWeldPassed,
                "test-failed",
                "A prescribed test was not passed, so no certificate is issued.",
                nameof(scope.TestWeldPassed),
                "ISO 14732:2025 7 (second-hand)"
            )
            .That(
                scope.FunctionalKnowledgePassed,
                "test-failed",
                "The test of functional knowledge was not passed, so no certificate is issued.",
                nameof(scope.FunctionalKnowledgePassed),
                "ISO 14732:2025 4.1 (second-hand)"
            );

    public static void Check(this ExaminerScope scope, Checks checks, DateOnly today) =>
        checks
            .Text(scope.Sector, Certificate.LongestText, "Give the sector", nameof(scope.Sector))
            .That(
                scope.Level is >= 1 and <= 3,
                "level",
                "Give the level, 1 to 3.",
                nameof(scope.Level)
            )
            .That(
                scope.VisionTestedOn <= today,
                "future",
                "The day of the vision test lies in the future; check it.",
                nameof(scope.VisionTestedOn)
            );
}
