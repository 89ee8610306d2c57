using WeldTrace.Domain.Certification;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Certificates.Issue;

/// <summary>What was typed for a new certificate.</summary>
public sealed class IssueCertificateForm
{
    public CertificateKind Kind { get; set; }

    public Guid? Person { get; set; }

    public string? Number { get; set; }

    public string? IssuedBy { get; set; }

    public DateOnly? TestedOn { get; set; }

    public DateOnly? ExpiresOn { get; set; }

    public string? Subject { get; set; }

    public string? ProcedureLabel { get; set; }

    public string? Variables { get; set; }

    public string? JointTypes { get; set; }

    public string? ControlMode { get; set; }

    public string? ToolType { get; set; }

    public string? Revalidation { get; set; }

    public string? ConfirmEveryMonths { get; set; } = "6";

    public bool FunctionalKnowledgePassed { get; set; }

    public bool TestWeldPassed { get; set; }

    public string? Method { get; set; }

    public string? Level { get; set; } = "2";

    public string? Sector { get; set; }

    public DateOnly? VisionTestedOn { get; set; }

    public IFormFile? File { get; set; }

    public string? Password { get; set; }

    public CertificateText Read(Entries entries) =>
        new(
            Number ?? "",
            IssuedBy ?? "",
            entries.Day(TestedOn, "the day of the test", nameof(TestedOn)),
            entries.Day(ExpiresOn, "the day of expiry", nameof(ExpiresOn)),
            Kind == CertificateKind.Training ? Subject ?? "" : null,
            Kind == CertificateKind.WeldingOperator ? ReadOperator(entries) : null,
            Kind == CertificateKind.Examiner ? ReadExaminer(entries) : null
        );

    private OperatorScope ReadOperator(Entries entries) =>
        new(
            ProcedureLabel ?? "",
            Variables ?? "",
            [
                .. (JointTypes ?? "").Split(
                    [',', ';'],
                    StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
                ),
            ],
            ControlMode ?? "",
            entries.Choice<ToolType>(ToolType, "Tool type", nameof(ToolType)),
            entries.Choice<Revalidation>(Revalidation, "Way of revalidation", nameof(Revalidation)),
            entries.Whole(
                ConfirmEveryMonths,
                "months",
                "Months between confirmations",
                nameof(ConfirmEveryMonths)
            ),
            FunctionalKnowledgePassed,
            TestWeldPassed
        );

    private ExaminerScope ReadExaminer(Entries entries) =>
        new(
            entries.Choice<ExaminationMethod>(Method, "Method", nameof(Method)),
            entries.Whole(Level, "levels", "Level", nameof(Level)),
            Sector ?? "",
            entries.Day(VisionTestedOn, "the day of the test of vision", nameof(VisionTestedOn))
        );
}
