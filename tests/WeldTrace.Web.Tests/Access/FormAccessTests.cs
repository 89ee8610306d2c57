using System.Net;
using System.Text.RegularExpressions;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Tests.CodeRules;

namespace WeldTrace.Web.Tests.Access;

/// <summary>
/// Every form that changes something, sent whole and right by each role: who may not send it changes nothing, who may
/// does; and sent with hostile values, which leave nothing behind and get a reason (<see cref="HostileForms"/>), and to records that
/// aren't there (<see cref="MissingRecords"/>). The rows follow each other as work does, so that each finds the records as its act needs them.
/// </summary>
[Collection(typeof(SecondDemoSiteGroup))]
public sealed partial class FormAccessTests(DemoSite site)
{
    /// <summary>
    /// Forms that are no act of a role: to sign in, to set up an empty site, one's own password and other means, to read the ledger again or sign its state,
    /// and to order histories, which changes no record (<see cref="Features.Trace.Histories.OrderedHistoriesTests"/> asks who may);
    /// and five that the demonstration never shows, whose roles the tests of their handlers look at.
    /// </summary>
    private static readonly string[] Others =
    [
        "SignIn sign-in",
        "SignIn sign-in-passkey",
        "SecondFactorPage begin-second-factor",
        "SecondFactorPage confirm-second-factor",
        "SecondFactorPage remove-second-factor",
        "PasskeysPage add-passkey",
        "PasskeysPage remove-passkey",
        "SessionsPage end-session",
        "PinPage set-pin",
        "PinPage erase-pin",
        "ChangePerson change-person",
        "ChangePerson choose-person",
        "PersonBadge withdraw-badge",
        "PersonPage reset-means",
        "PersonPage end-sessions",
        "FirstRun first-run",
        "ChangePassword change-password",
        "LedgerCheckPage check",
        "CheckpointList checkpoint",
        "OrderHistories order-histories",
        "HistoryOrderPage cancel-order",
        "HistoryOrderPage delete-order",
        "HistoryOrderPage order-again",
        "ArchiveVesselPage write-bundle",
        "ArchiveVesselPage archive-vessel",
        "LimitList ship",
        "ShowQualification sign",
    ];

    private readonly HostileForms _hostile = new(site);

    private static readonly string[] Reasons =
    [
        "your account has no such role",
        "began this piece and must close it",
    ];

    [Fact]
    public void Table_HasARowForEachForm_AndNoOther()
    {
        var listed = FormTable.Rows.Select(r => r.Name).Concat(Others).ToHashSet();

        SourceTree.AssertNone(
            FormsInTheProgram().Except(listed),
            "Say in the table who may send these forms:"
        );
        SourceTree.AssertNone(listed.Except(FormsInTheProgram()), "There are no such forms:");
    }

    [Fact]
    public async Task EachForm_ChangesNothing_UnlessSentByARoleThatMay()
    {
        List<string> wrong = [];
        foreach (var row in FormTable.Rows)
        {
            wrong.AddRange((await TryAsync(row)).Select(w => $"{row.Name}: {w}"));
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{_hostile.Sent} hostile forms, seed {HostileForms.Seed}."
        );
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        var report = await site.ReadAsync(db =>
            db.CheckLedgerAsync(TestContext.Current.CancellationToken)
        );
        Assert.True(report.Problems.Count == 0, string.Join('\n', report.Problems));
    }

    private async Task<IReadOnlyList<string>> TryAsync(FormRow row)
    {
        string path;
        try
        {
            path = await row.At(site);
        }
        catch (InvalidOperationException missing)
        {
            return [$"its record is not there: {missing.Message}"];
        }

        var actor = await site.VisitAsync(Person(row.Allowed[0]));
        var page = await SiteVisit.PageAsync(await actor.GetAsync(path));
        if (SentForm.Fill(page, row) is not { } fields)
        {
            return [$"{row.Allowed[0]} is not shown it at {path}: {page.Title}"];
        }

        List<string> wrong = [];
        var before = await site.LedgerSizeAsync();
        foreach (var person in DemoPeople.All.Prepend(null))
        {
            if (person is null || !row.Allowed.Contains(person.SignInName))
            {
                var visit = await site.VisitAsync(person);
                var answer = await visit.PostAsync(path, row.Handler, fields);
                if (!await IsRefusedAsync(answer))
                {
                    wrong.Add($"{person?.SignInName ?? "nobody"}: {await DescribeAsync(answer)}");
                }
            }
        }

        if (await site.LedgerSizeAsync() is var after && after != before)
        {
            wrong.Add($"{after - before} entries were made by roles that may not");
        }

        wrong.AddRange(await RefuseFalseFileAsync(row, actor, path, fields));
        wrong.AddRange(await _hostile.TryAsync(row, actor, path, fields));
        wrong.AddRange(await MissingRecords.TryAsync(row, actor, path, fields));
        var done = await actor.PostAsync(path, row.Handler, fields);
        if (await site.LedgerSizeAsync() == after)
        {
            wrong.Add($"{row.Allowed[0]}, who may, changed nothing: {await DescribeAsync(done)}");
        }

        return wrong;
    }

    /// <summary>A file that is not what its name says is refused with its reason; nothing is saved, and what was typed still stands.</summary>
    private async Task<IReadOnlyList<string>> RefuseFalseFileAsync(
        FormRow row,
        SiteVisit actor,
        string path,
        IReadOnlyList<KeyValuePair<string, string>> fields
    )
    {
        if (fields.All(f => SentForm.BytesOf(f.Value) is null))
        {
            return [];
        }

        var before = await site.LedgerSizeAsync();
        var answer = await actor.PostAsync(path, row.Handler, SentForm.WithFalseFiles(fields));
        var page = await SiteVisit.PageAsync(answer);
        List<string> wrong = [];
        if (await site.LedgerSizeAsync() != before)
        {
            wrong.Add("a web page handed in as a paper was kept");
        }

        if (page.QuerySelector(".error-summary li, .field-error") is null)
        {
            wrong.Add($"a false file got no reason: {await DescribeAsync(answer)}");
        }

        wrong.AddRange(
            row.Fields.Where(f => SentForm.IsLost(page, f))
                .Select(f => $"{f.Field} was lost with the false file")
        );
        return wrong;
    }

    // Barred from the page, no such form on it, or the act itself asks for another role.
    private static async Task<bool> IsRefusedAsync(HttpResponseMessage answer)
    {
        var to = answer.Headers.Location?.ToString() ?? "";
        return answer.StatusCode switch
        {
            HttpStatusCode.Redirect => to.Contains(Routes.SignIn, StringComparison.Ordinal)
                || to.Contains(AccessTable.NotAllowed, StringComparison.Ordinal),
            // The page that says so leads back to where the form was sent.
            HttpStatusCode.Conflict => (await SiteVisit.PageAsync(answer))
                .QuerySelectorAll("main a")
                .Any(a =>
                    a.GetAttribute("href") == answer.RequestMessage!.RequestUri!.PathAndQuery
                ),
            HttpStatusCode.OK => Reasons.Any(
                (await SiteVisit.PageAsync(answer)).Body!.TextContent.Contains
            ),
            _ => false,
        };
    }

    private static async Task<string> DescribeAsync(HttpResponseMessage answer)
    {
        var page = await SiteVisit.PageAsync(answer);
        var said = page.QuerySelectorAll(".error-summary li, [role=alert] li")
            .Select(e => e.TextContent.Trim());
        return $"{(int)answer.StatusCode} {answer.Headers.Location} {string.Join(' ', said)}";
    }

    private static DemoPerson Person(string name) =>
        DemoPeople.All.Single(p => p.SignInName == name);

    private static IEnumerable<string> FormsInTheProgram() =>
        SourceTree
            .Files("src/WeldTrace.Web", ".razor")
            .SelectMany(f =>
                FormName()
                    .Matches(f.Text)
                    .Select(m => m.Groups["name"].Value)
                    .Select(name =>
                        name.StartsWith('@') ? Constant().Match(f.Text).Groups["name"].Value : name
                    )
                    .Select(name => $"{Path.GetFileNameWithoutExtension(f.Path)} {name}")
            );

    [GeneratedRegex("@formname=\"(?<name>[^\"]+)\"")]
    private static partial Regex FormName();

    [GeneratedRegex("const string FormName = \"(?<name>[^\"]+)\"")]
    private static partial Regex Constant();
}
