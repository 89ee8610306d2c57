using WeldTrace.Domain.Certification;

namespace WeldTrace.Web.Features.Certificates;

/// <summary>What a certificate covers, in one line.</summary>
public static class CertificateScopeText
{
    public static string Of(Certificate certificate)
    {
        ArgumentNullException.ThrowIfNull(certificate);
        return certificate.Text switch
        {
            { Operator: { } o } =>
                $"{string.Join(", ", o.JointTypes)}; {o.ControlMode} control; {CertificateWords.Of(o.ToolType)}",
            { Examiner: { } e } => FormattableString.Invariant(
                $"{CertificateWords.Of(e.Method)}, level {e.Level}, {e.Sector}"
            ),
            { } training => training.Subject ?? "",
        };
    }
}
