using System.Net;
using System.Text.RegularExpressions;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Sends a form to the address of a record that isn't there: the answer is that of the address when it is only looked at.</summary>
internal static partial class MissingRecords
{
    private const string Title = "Nothing here";

    /// <summary>What the site answered wrongly.</summary>
    /// <param name="row">Form.</param>
    /// <param name="actor">Who may send it.</param>
    /// <param name="path">Where it is shown.</param>
    /// <param name="fields">What is right for it.</param>
    public static async Task<IReadOnlyList<string>> TryAsync(
        FormRow row,
        SiteVisit actor,
        string path,
        IReadOnlyList<KeyValuePair<string, string>> fields
    )
    {
        List<string> wrong = [];
        foreach (var missing in AddressesBeside(path))
        {
            var shown = await DescribeAsync(await actor.GetAsync(missing));
            var sent = await DescribeAsync(await actor.PostAsync(missing, row.Handler, fields));
            if (!IsRight(sent, shown))
            {
                wrong.Add($"{missing}, where nothing is, answered {sent}, and a look {shown}");
            }
        }

        return wrong;
    }

    // A file that is no longer kept while its run is sends to where the file is brought; all else is missing.
    private static bool IsRight(string sent, string shown) =>
        sent == shown
        && (sent == $"404 {Title}" || sent.Contains("refused=gone", StringComparison.Ordinal));

    /// <summary>The address with one after the other of what it names replaced by what isn't there.</summary>
    private static IEnumerable<string> AddressesBeside(string path) =>
        Named().Matches(path).Select(m => path.Remove(m.Index, m.Length).Insert(m.Index, Other(m)));

    private static string Other(Match named) =>
        Guid.TryParse(named.Value, out _) ? Guid.CreateVersion7().ToString("D")
        : named.Value.Contains('-', StringComparison.Ordinal) ? "NR10-9999"
        : named.Value + "999";

    private static async Task<string> DescribeAsync(HttpResponseMessage answer) =>
        answer.StatusCode == HttpStatusCode.Redirect
            ? $"302 {answer.Headers.Location?.PathAndQuery}"
            : $"{(int)answer.StatusCode} {(await SiteVisit.PageAsync(answer)).Title}";

    [GeneratedRegex(@"(?<=/)([0-9a-f-]{36}|NR10-\d+|[A-Z]?\d+)(?=/|\?|$)")]
    private static partial Regex Named();
}
