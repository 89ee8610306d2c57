using WeldTrace.Domain.Certification;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>F4. The sample certificate was tested on 2 February 2026, expires on 2 March 2028, and is confirmed every six months: first by 2 August 2026.</summary>
internal static class CertificateCauses
{
    public static IReadOnlyList<GateCause> All { get; } =
    [
        new("F4", "no certificate", ["holds no FSW operator certificate"], () => With([])),
        new(
            "F4",
            "only an examiner's certificate",
            ["holds no FSW operator certificate"],
            () =>
                With([
                    SampleCertificates.Examiner(SamplePeople.Welders[0], ExaminationMethod.Visual),
                ])
        ),
        new(
            "F4",
            "certificate expires today",
            ["expired on 2028-03-02", "new test weld"],
            () => On(new DateOnly(2028, 3, 2))
        ),
        new(
            "F4",
            "certificate not valid yet",
            ["valid only from 2026-02-02"],
            () => On(new DateOnly(2026, 2, 1))
        ),
        new(
            "F4",
            "confirmation lapsed",
            ["confirmation", "due by 2026-08-02", "lapsed"],
            () => On(new DateOnly(2026, 8, 2))
        ),
        new("F4", "certificate revoked", ["was revoked: Weld with cavities."], () => Revoked([])),
        new(
            "F4",
            "certificate revoked for the joint type",
            ["was revoked for lap joints: Weld with cavities."],
            () => Revoked(["lap"])
        ),
        new(
            "F4",
            "certificate of other joint types",
            ["covers butt, corner joints, not lap"],
            () => Scoped(s => s with { JointTypes = ["butt", "corner"] })
        ),
        new(
            "F4",
            "certificate of another control mode",
            ["under position control, not force"],
            () => Scoped(s => s with { ControlMode = "position" })
        ),
        new(
            "F4",
            "certificate of another tool type",
            ["for bobbin tools, not fixed probe"],
            () => Scoped(s => s with { ToolType = ToolType.Bobbin })
        ),
        .. HighCategories.Select(category => new GateCause(
            "F4",
            $"certificate kept up continuously, PED category {category}",
            ["kept up continuously", "PED categories II to IV", $"category {category}"],
            () => Continuous(category)
        )),
    ];

    /// <summary>The categories to which ISO 14732:2025 6.3 c is not open.</summary>
    private static PedCategory[] HighCategories =>
        [PedCategory.II, PedCategory.III, PedCategory.IV];

    /// <summary>The welder's certificate is kept up continuously; the design is of a category, or states none.</summary>
    public static WeldGateFacts Continuous(PedCategory? category)
    {
        var shop = new SampleShop(
            design: SampleDesigns.Content("WP-07") with
            {
                PedCategory = category,
                PedSource = category is null ? null : "Annex II, table 2",
            }
        );
        var facts = shop.Facts();
        return facts with
        {
            Certificates =
            [
                SampleCertificates.Welder(
                    SamplePeople.Welders[0],
                    scope: SampleCertificates.Scope with
                    {
                        Revalidation = Revalidation.Continuous,
                    }
                ),
            ],
        };
    }

    private static WeldGateFacts With(IReadOnlyList<Certificate> certificates) =>
        GateCauses.Ready(f => f with { Certificates = certificates });

    private static WeldGateFacts On(DateOnly today) =>
        GateCauses.Ready(f => f with { Today = today });

    private static WeldGateFacts Scoped(Func<OperatorScope, OperatorScope> change) =>
        With([
            SampleCertificates.Welder(
                SamplePeople.Welders[0],
                scope: change(SampleCertificates.Scope)
            ),
        ]);

    private static WeldGateFacts Revoked(IReadOnlyList<string> jointTypes)
    {
        var certificate = SampleCertificates.Welder(SamplePeople.Welders[0]);
        Accept.All(
            certificate.Revoke(
                jointTypes,
                "Weld with cavities.",
                SampleTime.Day,
                SamplePeople.QualityManager,
                SampleTime.Start
            )
        );
        return With([certificate]);
    }
}
