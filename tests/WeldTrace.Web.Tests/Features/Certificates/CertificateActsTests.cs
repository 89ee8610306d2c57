using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Certificates.Issue;
using WeldTrace.Web.Features.Certificates.Show;

namespace WeldTrace.Web.Tests.Features.Certificates;

public sealed class CertificateActsTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Issue_Whole_IsSigned_AndKeepsItsPaper()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var quality = await site.EnterAsync("Quentin Hale", Role.QualityManager);

        var issued = await IssueAsync(site, quality);

        Assert.Empty(issued.Refusals);
        var certificate = await site.ReadAsync<Certificate>(issued.Value!.Id);
        Assert.Equal(("OC-1", "Olav Berg"), (certificate.Number, certificate.PersonName));
        Assert.Equal(site.Today.AddMonths(6 - 1), certificate.ConfirmationDue);
        var signature = await site.Database.ReadAsync(db => db.Signatures.SingleAsync());
        Assert.Equal(
            (certificate.Id, Certificate.IssueMeaning),
            (signature.SignedId, signature.Meaning)
        );
        Assert.Equal(1, await site.PapersAsync());
        Assert.Equal(1, await site.EntriesAsync(certificate.Id));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Issue_ByARoleThatMayNot_OrForOneself_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var inspector = await site.EnterAsync("Ines Falk", Role.Inspector);
        var engineer = await site.EnterAsync("Edda Lund", Role.Engineer);

        var byInspector = await IssueAsync(site, inspector);
        var forOneself = await IssueAsync(site, engineer, f => f.Person = engineer.PersonId);

        Assert.Equal("role:", WorkingSite.Text(byInspector.Refusals));
        Assert.Equal("F17:", WorkingSite.Text(forOneself.Refusals));
        await NothingAsync(site);
    }

    [Fact]
    public async Task Issue_ForNobody_WithUnreadableFields_TellsAll()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var quality = await site.EnterAsync("Quentin Hale", Role.QualityManager);

        var issued = await IssueAsync(
            site,
            quality,
            f =>
                (f.Person, f.TestedOn, f.ToolType, f.ConfirmEveryMonths, f.File) = (
                    Guid.Empty,
                    null,
                    "spoon",
                    "half",
                    WorkingSite.Paper("MZ", "c.pdf")
                )
        );

        Assert.Equal(
            ["ConfirmEveryMonths", "File", "Person", "TestedOn", "ToolType"],
            issued.Refusals.Select(r => r.Field).Order(StringComparer.Ordinal)
        );
        await NothingAsync(site);
    }

    [Fact]
    public async Task Issue_WithAWrongPassword_SavesNothing()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var quality = await site.EnterAsync("Quentin Hale", Role.QualityManager);

        var issued = await IssueAsync(site, quality, f => f.Password = "seven quiet ankers");

        Assert.Equal("password:Password", WorkingSite.Text(issued.Refusals));
        await NothingAsync(site);
    }

    [Fact]
    public async Task Issue_ANumberThatIsTaken_IsToldAtTheNumber()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var quality = await site.EnterAsync("Quentin Hale", Role.QualityManager);
        var other = await site.EnterAsync("Otto Vang", Role.Operator);
        Accept.Value(await IssueAsync(site, quality));

        var again = await IssueAsync(site, quality, f => f.Person = other.PersonId);

        Assert.Equal("exists:Number", WorkingSite.Text(again.Refusals));
    }

    /// <summary>The one that is renewed must be revoked or have expired: two that hold at once leave open which is confirmed.</summary>
    [Fact]
    public async Task Issue_OneThatOverlapsAnother_IsRefusedWithItsNumberAndKeepsNothing()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var quality = await site.EnterAsync("Quentin Hale", Role.QualityManager);
        var first = Accept.Value(await IssueAsync(site, quality));

        var second = await IssueAsync(
            site,
            quality,
            f =>
                (f.Number, f.JointTypes, f.File) = (
                    "OC-2",
                    "butt, lap",
                    WorkingSite.Paper("%PDF-2")
                )
        );
        var later = await IssueAsync(
            site,
            quality,
            f =>
                (f.Number, f.TestedOn, f.ExpiresOn) = (
                    "OC-3",
                    site.Today,
                    first.ExpiresOn.AddYears(1)
                )
        );

        Assert.Equal("overlap:TestedOn", WorkingSite.Text(second.Refusals));
        Assert.Contains("OC-1", Assert.Single(second.Refusals).Sentence, StringComparison.Ordinal);
        Assert.Equal("overlap:TestedOn", WorkingSite.Text(later.Refusals));
        Assert.Equal(1, await site.Database.ReadAsync(db => db.Certificates.CountAsync()));
        Assert.Equal(1, await site.PapersAsync());
        Assert.Equal(1, await site.Database.ReadAsync(db => db.Signatures.CountAsync()));
    }

    [Fact]
    public async Task Confirm_InTime_IsSigned_AndMovesTheDueDay()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var quality = await site.EnterAsync("Quentin Hale", Role.QualityManager);
        var id = Accept.Value(await IssueAsync(site, quality)).Id;
        site.Clock.Advance(TimeSpan.FromDays(90));

        Accept.All(await ConfirmAsync(site, id, quality));

        var certificate = await site.ReadAsync<Certificate>(id);
        Assert.Equal(site.Today.AddMonths(6), certificate.ConfirmationDue);
        Assert.Equal(2, await site.EntriesAsync(id));
        Assert.Equal(
            2,
            await site.Database.ReadAsync(db => db.Signatures.CountAsync(s => s.SignedId == id))
        );
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Confirm_TooLate_ByTheWrongRole_OrNothing_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var quality = await site.EnterAsync("Quentin Hale", Role.QualityManager);
        var inspector = await site.EnterAsync("Ines Falk", Role.Inspector);
        var id = Accept.Value(await IssueAsync(site, quality)).Id;

        var byInspector = await ConfirmAsync(site, id, inspector);
        var ofNothing = await ConfirmAsync(site, Guid.Empty, quality);
        site.Clock.Advance(TimeSpan.FromDays(200));
        var late = await ConfirmAsync(site, id, quality);

        Assert.Equal("role:", WorkingSite.Text(byInspector.Refusals));
        Assert.Equal("certificate:", WorkingSite.Text(ofNothing.Refusals));
        Assert.Equal("lapsed:", WorkingSite.Text(late.Refusals));
        Assert.Empty((await site.ReadAsync<Certificate>(id)).Confirmations);
    }

    [Fact]
    public async Task Revoke_IsSigned_AndForGood()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var quality = await site.EnterAsync("Quentin Hale", Role.QualityManager);
        var engineer = await site.EnterAsync("Edda Lund", Role.Engineer);
        var id = Accept.Value(await IssueAsync(site, quality)).Id;
        var byEngineer = await RevokeAsync(site, id, engineer);
        var wordless = await RevokeAsync(site, id, quality, f => f.Reason = "");
        var unknown = await RevokeAsync(site, id, quality, f => f.JointTypes = "butt");

        Accept.All(await RevokeAsync(site, id, quality));

        var again = await RevokeAsync(site, id, quality);
        var confirmed = await ConfirmAsync(site, id, quality);
        Assert.Equal("role:", WorkingSite.Text(byEngineer.Refusals));
        Assert.Equal("missing:Reason", WorkingSite.Text(wordless.Refusals));
        Assert.Equal("joint-type:JointTypes", WorkingSite.Text(unknown.Refusals));
        Assert.Equal("state:", WorkingSite.Text(again.Refusals));
        Assert.Equal("state:", WorkingSite.Text(confirmed.Refusals));
        Assert.True((await site.ReadAsync<Certificate>(id)).IsRevoked);
        Assert.Equal(2, await site.EntriesAsync(id));
    }

    private static async Task<Outcome<Certificate>> IssueAsync(
        WorkingSite site,
        Actor actor,
        Action<IssueCertificateForm>? edit = null
    )
    {
        var welder =
            await site.Database.ReadAsync(db =>
                db.People.FirstOrDefaultAsync(p => p.PrintedName == "Olav Berg")
            )
            ?? await site.ReadAsync<Person>(
                (await site.EnterAsync("Olav Berg", Role.Operator)).PersonId
            );
        var form = new IssueCertificateForm
        {
            Kind = CertificateKind.WeldingOperator,
            Person = welder.Id,
            Number = "OC-1",
            IssuedBy = "Float works school",
            TestedOn = site.Today.AddMonths(-1),
            ExpiresOn = site.Today.AddYears(2),
            ProcedureLabel = "WP-07 rev A",
            Variables = "6061-T6, 3 mm",
            JointTypes = "lap",
            ControlMode = "force",
            ToolType = nameof(ToolType.FixedProbe),
            Revalidation = nameof(Revalidation.NewTest),
            FunctionalKnowledgePassed = true,
            TestWeldPassed = true,
            File = WorkingSite.Paper(),
            Password = WorkingSite.Password,
        };
        edit?.Invoke(form);
        return await new IssueCertificateHandler(
            site.Database,
            site.Passwords,
            site.Day,
            site.Clock
        ).HandleAsync(form, actor, CancellationToken.None);
    }

    private static Task<Outcome> ConfirmAsync(WorkingSite site, Guid id, Actor actor) =>
        Handler(site)
            .ConfirmAsync(
                id,
                new() { Password = WorkingSite.Password },
                actor,
                CancellationToken.None
            );

    private static Task<Outcome> RevokeAsync(
        WorkingSite site,
        Guid id,
        Actor actor,
        Action<RevokeForm>? edit = null
    )
    {
        var form = new RevokeForm
        {
            Reason = "Welds were found unsound",
            Password = WorkingSite.Password,
        };
        edit?.Invoke(form);
        return Handler(site).RevokeAsync(id, form, actor, CancellationToken.None);
    }

    private static CertificateHandler Handler(WorkingSite site) =>
        new(site.Database, site.Passwords, site.Sites, site.Clock);

    private static async Task NothingAsync(WorkingSite site)
    {
        Assert.Equal(0, await site.Database.ReadAsync(db => db.Certificates.CountAsync()));
        Assert.Equal(0, await site.PapersAsync());
        Assert.Equal(0, await site.Database.ReadAsync(db => db.Signatures.CountAsync()));
    }
}
