using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Tests.Access;

/// <summary>People, their certificates, the site and its limits.</summary>
internal static class PeopleForms
{
    private const string Manager = "quality";

    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        new(
            "PersonPage person",
            "admin quality",
            Routes.NewPerson,
            ("In.PrintedName", "Solveig Aas"),
            ("In.SignInName", "solveig"),
            ("In.Roles", "Auditor"),
            ("In.Password", "four grey herons wading")
        ),
        new(
            "ImportPeople import-people",
            "admin quality",
            Routes.ImportPeople,
            ("In.File", ""),
            ("In.Text", "printed name,sign-in name,roles\nTorunn Moe,torunn,auditor"),
            ("In.IsConfirmed", "true")
        ),
        FormRow.Of(
            "PersonPage person",
            "quality admin",
            async db =>
                Routes.Person((await db.People.SingleAsync(p => p.SignInName == "solveig")).Id),
            ("In.PrintedName", "Solveig Aasen"),
            ("In.Password", "")
        ),
        new(
            "SiteKeyPage key",
            "admin",
            Routes.SiteKey,
            ("In.Reason", "The notebook of the key's keeper was lost"),
            ("In.Password", WeldTrace.Web.Demo.DemoPeople.Password)
        ),
        new(
            "SystemTokens give-system-token",
            "admin",
            Routes.SystemTokens,
            ("In.SystemName", "Bench computer"),
            ("In.Scope", SentForm.Choice("push bench readings")),
            ("In.Days", "30")
        ),
        new(
            "SystemTokens withdraw-system-token",
            "admin",
            Routes.SystemTokens,
            ("Out.Id", SentForm.Choice("Bench computer")),
            ("Out.Reason", "The computer is replaced")
        ),
        new(
            "SharedTablets register-tablet",
            "quality admin",
            Routes.SharedTablets,
            ("In.Name", "Tablet at welding cell 2")
        ),
        new(
            "SharedTablets withdraw-tablet",
            "quality admin",
            Routes.SharedTablets,
            ("Out.Id", SentForm.Choice("Tablet at welding cell 2")),
            ("Out.Reason", "The tablet fell")
        ),
        new("SiteSettings site", "admin", Routes.SiteSettings, ("In.Name", "Halvorsen Bay Works")),
        new(
            "IssueCertificate certificate",
            "quality engineer",
            Routes.NewCertificateOf(Domain.Certification.CertificateKind.WeldingOperator),
            ("In.Number", "OC-900"),
            ("In.IssuedBy", "Float works school"),
            ("In.ProcedureLabel", "WP-101 rev B"),
            ("In.Variables", "Lap, 6 mm"),
            ("In.JointTypes", "lap"),
            ("In.ControlMode", "force"),
            ("In.TestWeldPassed", "true"),
            ("In.FunctionalKnowledgePassed", "true"),
            ("In.TestedOn", FormTable.Today),
            ("In.ExpiresOn", FormTable.In(365))
        ),
        FormRow.Of("ShowCertificate confirm", "quality engineer", OfOperatorAsync),
        FormRow.Of(
            "ShowCertificate revoke",
            Manager,
            OfOperatorAsync,
            ("Back.Reason", "Left the works")
        ),
        FormRow.Of(
            "EnterLimits limits",
            Manager,
            async db =>
                Routes.ReviseLimits(
                    (await db.LimitTables.SingleAsync(t => t.Code == "MINIMA-3AL")).Id
                ),
            ("In.Reason", "Read again")
        ),
        FormRow.Of(
            "ShowLimitTable check",
            Manager,
            async db =>
                Routes.LimitTable(
                    (await db.LimitTables.FirstAsync(t => t.SupersededById == null)).Id
                ),
            ("In.OwnCopy", "Copy 3 in the office")
        ),
    ];

    private static async Task<string> OfOperatorAsync(WeldTraceDbContext db) =>
        Routes.Certificate((await db.Certificates.SingleAsync(c => c.Number == "OC-900")).Id);
}
