using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Certification;

/// <summary>What is known of whoever is about to test, examine or sign, on the day.</summary>
/// <param name="Certificates">All certificates of that person.</param>
/// <param name="Today">Day at the site.</param>
public sealed record ExaminerFacts(IReadOnlyList<Certificate> Certificates, DateOnly Today)
{
    /// <summary>The refusal of floor rule F19; nothing when the person is certified for the method.</summary>
    public IEnumerable<Refusal> Against(ExaminationMethod method) =>
        CertificateRules.AgainstExamining(Certificates, method, Today);
}
