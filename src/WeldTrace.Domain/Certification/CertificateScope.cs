namespace WeldTrace.Domain.Certification;

/// <summary>What an operator is qualified for, and by which test weld.</summary>
/// <param name="ProcedureLabel">Procedure to which the test weld was made.</param>
/// <param name="Variables">Variables of the test weld as actually run, in words.</param>
/// <param name="JointTypes">Joint types covered, for instance <c>lap</c>; at least one.</param>
/// <param name="ControlMode">Control mode of the machine type covered, for instance <c>force</c>.</param>
/// <param name="ToolType">Tool type covered.</param>
/// <param name="Revalidation">How the qualification is kept up.</param>
/// <param name="ConfirmEveryMonths">Months between confirmations by the responsible person, 1 to 24; 6 is common.</param>
/// <param name="FunctionalKnowledgePassed">Whether the test of functional knowledge of the machine was passed.</param>
/// <param name="TestWeldPassed">Whether every prescribed test of the test weld was passed.</param>
public sealed record OperatorScope(
    string ProcedureLabel,
    string Variables,
    IReadOnlyList<string> JointTypes,
    string ControlMode,
    ToolType ToolType,
    Revalidation Revalidation,
    int ConfirmEveryMonths,
    bool FunctionalKnowledgePassed,
    bool TestWeldPassed
);

/// <summary>What an examiner is qualified for.</summary>
/// <param name="Method">Method.</param>
/// <param name="Level">Level 1 to 3.</param>
/// <param name="Sector">Sector, for instance <c>welds</c>.</param>
/// <param name="VisionTestedOn">Day of the last test of vision; good for a year (common practice, from memory of ISO 9712).</param>
public sealed record ExaminerScope(
    ExaminationMethod Method,
    int Level,
    string Sector,
    DateOnly VisionTestedOn
);

/// <summary>That a responsible person confirmed an operator's continued work.</summary>
/// <param name="On">Day.</param>
/// <param name="ById">Responsible person.</param>
/// <param name="ByName">Printed name.</param>
public sealed record Confirmation(DateOnly On, Guid ById, string ByName);

/// <summary>That a qualification was taken away for cause.</summary>
/// <param name="JointTypes">Joint types it no longer covers; empty when it covers nothing any more.</param>
/// <param name="Reason">Why.</param>
/// <param name="On">From this day.</param>
/// <param name="ByName">Printed name of whoever revoked it.</param>
public sealed record Revocation(
    IReadOnlyList<string> JointTypes,
    string Reason,
    DateOnly On,
    string ByName
);

/// <summary>What is written on a certificate.</summary>
/// <param name="Number">Number of the certificate; unique.</param>
/// <param name="IssuedBy">Body or person that issued it.</param>
/// <param name="TestedOn">Day of the test weld or examination; validity counts from it (ISO 14732:2025 6.1, second-hand).</param>
/// <param name="ExpiresOn">First day on which it is no longer valid.</param>
/// <param name="Subject">What a training was about; null for the other kinds.</param>
/// <param name="Operator">Scope of an operator's certificate; null for the other kinds.</param>
/// <param name="Examiner">Scope of an examiner's certificate; null for the other kinds.</param>
public sealed record CertificateText(
    string Number,
    string IssuedBy,
    DateOnly TestedOn,
    DateOnly ExpiresOn,
    string? Subject,
    OperatorScope? Operator,
    ExaminerScope? Examiner
)
{
    /// <summary>The kind that follows from what is written.</summary>
    public CertificateKind Kind =>
        Operator is not null ? CertificateKind.WeldingOperator
        : Examiner is not null ? CertificateKind.Examiner
        : CertificateKind.Training;
}
