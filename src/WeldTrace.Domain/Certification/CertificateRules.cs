using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Certification;

/// <summary>What an operator is about to do, as far as the certificate must cover it.</summary>
/// <param name="JointType">Joint type, for instance <c>lap</c>.</param>
/// <param name="ControlMode">Control mode of the machine; null while none is chosen.</param>
/// <param name="ToolType">Type of tool.</param>
/// <param name="PedCategory">PED category of the vessel; null when its design states none.</param>
public sealed record OperatorTask(
    string JointType,
    string? ControlMode,
    ToolType ToolType,
    PedCategory? PedCategory
);

/// <summary>Floor rules F4 and F19: whether a person holds a certificate that covers the work, valid on the day.</summary>
public static class CertificateRules
{
    private const string OperatorSource =
        "ISO 25239-5:2020 4.2.2, 4.12.2; ISO 14732:2025 6 (second-hand)";

    private const string ExaminerSource = "ISO 25239-5:2020 4.3.2; ISO 9712:2012 11";

    /// <summary>Judges floor rule F4.</summary>
    /// <param name="operatorName">Printed name of the operator.</param>
    /// <param name="certificates">All certificates of that person.</param>
    /// <param name="task">What is to be welded.</param>
    /// <param name="today">Day at the site.</param>
    public static RuleVerdict ForWelding(
        string operatorName,
        IReadOnlyList<Certificate> certificates,
        OperatorTask task,
        DateOnly today
    )
    {
        ArgumentNullException.ThrowIfNull(certificates);
        ArgumentNullException.ThrowIfNull(task);
        var own = certificates
            .Where(c => c.Attests == CertificateKind.WeldingOperator)
            .OrderByDescending(c => c.ExpiresOn)
            .ToList();
        var covering = own.FirstOrDefault(c => Against(c, task, today) is null);
        return covering is not null
            ? new(
                "F4",
                "Operator qualified",
                RuleStanding.Holds,
                $"{operatorName} holds {covering.Number}, valid until {covering.ExpiresOn:yyyy-MM-dd}, next confirmation by {covering.ConfirmationDue:yyyy-MM-dd}.",
                OperatorSource
            )
            : new(
                "F4",
                "Operator qualified",
                RuleStanding.Forbids,
                own.Count == 0
                    ? $"{operatorName} holds no FSW operator certificate; the quality manager enters it."
                    : string.Join(" ", own.Select(c => Against(c, task, today)).Distinct()),
                OperatorSource
            );
    }

    /// <summary>The refusal of floor rule F19; nothing when a certificate covers the method on the day.</summary>
    /// <param name="certificates">All certificates of the examiner.</param>
    /// <param name="method">Method.</param>
    /// <param name="today">Day at the site.</param>
    public static IEnumerable<Refusal> AgainstExamining(
        IReadOnlyList<Certificate> certificates,
        ExaminationMethod method,
        DateOnly today
    )
    {
        ArgumentNullException.ThrowIfNull(certificates);
        var own = certificates
            .Where(c => c.Text.Examiner?.Method == method)
            .OrderByDescending(c => c.ExpiresOn)
            .ToList();
        if (own.Any(c => Against(c, today) is null))
        {
            yield break;
        }

        yield return new Refusal(
            "F19",
            own.Count == 0
                ? $"You hold no certificate for {CertificateWords.Of(method)} examination; the quality manager enters it, or a qualified colleague signs."
                : string.Join(" ", own.Select(c => Against(c, today)).Distinct()),
            null,
            ExaminerSource
        );
    }

    /// <summary>Why a certificate doesn't hold for a weld; null when it does.</summary>
    private static string? Against(Certificate certificate, OperatorTask task, DateOnly today)
    {
        var scope = certificate.Text.Operator!;
        var number = certificate.Number;
        return today >= certificate.ExpiresOn
                ? $"{number} expired on {certificate.ExpiresOn:yyyy-MM-dd}; a new test weld is needed."
            : today < certificate.Text.TestedOn
                ? $"{number} is valid only from {certificate.Text.TestedOn:yyyy-MM-dd}."
            : certificate.IsRevoked ? $"{number} was revoked: {certificate.Revocations[^1].Reason}"
            : today >= certificate.ConfirmationDue
                ? $"The confirmation of {number} was due by {certificate.ConfirmationDue:yyyy-MM-dd}; it has lapsed."
            : !Has(scope.JointTypes, task.JointType)
                ? $"{number} covers {string.Join(", ", scope.JointTypes)} joints, not {task.JointType}."
            : certificate.Revocations.Any(r => Has(r.JointTypes, task.JointType))
                ? $"{number} was revoked for {task.JointType} joints: {certificate.Revocations.First(r => Has(r.JointTypes, task.JointType)).Reason}"
            : task.ControlMode is { } mode
            && !scope.ControlMode.Equals(mode, StringComparison.OrdinalIgnoreCase)
                ? $"{number} is for machines under {scope.ControlMode} control, not {task.ControlMode}."
            : scope.ToolType != task.ToolType
                ? $"{number} is for {CertificateWords.Of(scope.ToolType)} tools, not {CertificateWords.Of(task.ToolType)}."
            : scope.Revalidation == Revalidation.Continuous && task.PedCategory >= PedCategory.II
                ? $"{number} is kept up continuously, which is not open to vessels of PED categories II to IV; this one is of {PedCategories.Word(task.PedCategory.Value)} (ISO 14732:2025 6.3 c)."
            : null;
    }

    /// <summary>Why a certificate doesn't hold for an examination; null when it does.</summary>
    private static string? Against(Certificate certificate, DateOnly today) =>
        today >= certificate.ExpiresOn
            ? $"Your certificate {certificate.Number} expired on {certificate.ExpiresOn:yyyy-MM-dd}."
        : today < certificate.Text.TestedOn
            ? $"Your certificate {certificate.Number} is valid only from {certificate.Text.TestedOn:yyyy-MM-dd}."
        : certificate.IsRevoked
            ? $"Your certificate {certificate.Number} was revoked: {certificate.Revocations[^1].Reason}"
        : today >= certificate.ConfirmationDue
            ? $"The test of vision for {certificate.Number} was due by {certificate.ConfirmationDue:yyyy-MM-dd}; have your vision tested and the quality manager enter it."
        : null;

    private static bool Has(IReadOnlyList<string> words, string word) =>
        words.Contains(word, StringComparer.OrdinalIgnoreCase);
}
