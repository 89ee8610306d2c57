using System.Globalization;
using System.Net;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Every address of the running application, asked for by nobody and by each role, answers as <see cref="AccessTable"/> says.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class AccessTests(DemoSite site)
{
    private const string NotAllowedTitle = "Not for your role";

    [Fact]
    public void Table_HasARowForEachAddress_AndNoOther()
    {
        var answered = SiteEndpoint.AllOf(site).Where(e => !e.IsFile).Select(e => e.Pattern);

        Assert.Equal(
            answered.Order(StringComparer.Ordinal),
            AccessTable.Rows.Select(r => r.Pattern).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task EachAddress_AskedByEachRole_AnswersAsTheTableSays()
    {
        var addresses = await DemoAddresses.ReadAsync(site);
        List<string> wrong = [];
        foreach (var (column, person) in DemoPeople.All.Prepend(null).Index())
        {
            var visit = await site.VisitAsync(person);
            foreach (var row in AccessTable.Rows)
            {
                var address = addresses.GetValueOrDefault(row.Pattern, row.Pattern);
                var answer = await AnswerAsync(await visit.GetAsync(address), row.Pattern);
                if (answer != row.Answers[column])
                {
                    wrong.Add(
                        $"{row.Pattern} for {person?.SignInName ?? "nobody"}: {answer}, not {row.Answers[column]}"
                    );
                }
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    /// <summary>The files of the program say nothing about the site, so everyone may read them, and nothing else is open by accident.</summary>
    [Fact]
    public void Endpoints_OpenToEveryone_AreFilesAndTheAddressesInTheTable()
    {
        var open = AccessTable.Rows.Where(r => r.Answers[0] == "yes").Select(r => r.Pattern);

        Assert.All(
            SiteEndpoint.AllOf(site).Where(e => e.IsOpen && !e.IsFile),
            e => Assert.Contains(e.Pattern, open.Append(Routes.FirstRun))
        );
        Assert.All(SiteEndpoint.AllOf(site).Where(e => e.IsFile), e => Assert.True(e.IsOpen));
    }

    private static async Task<string> AnswerAsync(HttpResponseMessage answer, string pattern)
    {
        var to = answer.Headers.Location?.ToString() ?? "";
        if (answer.StatusCode == HttpStatusCode.Redirect)
        {
            return to.Contains(Routes.SignIn, StringComparison.Ordinal) ? "in"
                : to.Contains(AccessTable.NotAllowed, StringComparison.Ordinal) ? "no"
                : "yes";
        }

        if (answer.StatusCode != HttpStatusCode.OK)
        {
            return ((int)answer.StatusCode).ToString(CultureInfo.InvariantCulture);
        }

        var isRefusal =
            pattern != AccessTable.NotAllowed
            && answer.Content.Headers.ContentType?.MediaType == "text/html"
            && (await SiteVisit.PageAsync(answer)).Title == NotAllowedTitle;
        return isRefusal ? "refused in place" : "yes";
    }
}
