using System.Net;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using WeldTrace.Persistence.Roles;
using WeldTrace.Web.Tests.Fuzz;

namespace WeldTrace.Web.Tests.Access;

/// <summary>
/// Sends a form that is right but for what was put into it with ill will, by somebody who may send it. The database takes no entry of the
/// ledger meanwhile, so that whatever is accepted must be taken back whole, and the records stay as the next form needs them.
/// </summary>
internal sealed class HostileForms(DemoSite site)
{
    public const int Seed = 20_261_127;

    private const string Confirmed = "In.IsConfirmed";
    private const int ManyFields = 3_000;
    private static readonly int SendsOfEach = int.Parse(
        Environment.GetEnvironmentVariable("WELDTRACE_HOSTILE_SENDS") ?? "2",
        System.Globalization.CultureInfo.InvariantCulture
    );

    private readonly Random _random = new(Seed);
    private readonly Dictionary<SiteVisit, string> _tokens = [];

    /// <summary>How many were sent.</summary>
    public int Sent { get; private set; }

    /// <summary>What the site did wrong with any of them.</summary>
    /// <param name="row">Form.</param>
    /// <param name="actor">Who may send it.</param>
    /// <param name="path">Where it is shown.</param>
    /// <param name="fields">What is right for it.</param>
    public async Task<IReadOnlyList<string>> TryAsync(
        FormRow row,
        SiteVisit actor,
        string path,
        IReadOnlyList<KeyValuePair<string, string>> fields
    )
    {
        List<string> wrong = [];
        var before = await RowsAsync();
        await RefuseEntriesAsync(true);
        try
        {
            for (var send = 0; send < SendsOfEach; send++)
            {
                var sent = Spoil(fields);
                if (await SendAsync(row, actor, path, sent) is { } fault)
                {
                    wrong.Add($"hostile form {Sent} (seed {Seed}): {fault} {Tell(sent)}");
                }
            }
        }
        finally
        {
            await RefuseEntriesAsync(false);
        }

        if (await RowsAsync() is var after && after != before)
        {
            wrong.Add($"hostile forms left rows behind: {after} instead of {before}");
        }

        return wrong;
    }

    private async Task<string?> SendAsync(
        FormRow row,
        SiteVisit actor,
        string path,
        IReadOnlyList<KeyValuePair<string, string>> fields
    )
    {
        Sent++;
        var answer = await PostAsync(row, actor, path, fields);
        if ((int)answer.StatusCode is >= 500 or 100)
        {
            return $"answered {(int)answer.StatusCode}";
        }

        if (answer.StatusCode is not HttpStatusCode.OK || IsAskedFirst(row, fields))
        {
            return null;
        }

        // Nothing was kept, so somebody has to be told why.
        var page = await SiteVisit.PageAsync(answer);
        return page.QuerySelector(".error-summary li, .field-error, [role=alert]") is null
            ? $"was shown again without a reason: {page.Title}"
            : null;
    }

    // A list that nobody has confirmed is shown as it would be entered; of several values the first is read.
    private static bool IsAskedFirst(
        FormRow row,
        IEnumerable<KeyValuePair<string, string>> fields
    ) =>
        row.Fields.Any(f => f.Field == Confirmed)
        && fields.FirstOrDefault(f => f.Key == Confirmed).Value != "true";

    private async Task<HttpResponseMessage> PostAsync(
        FormRow row,
        SiteVisit actor,
        string path,
        IReadOnlyList<KeyValuePair<string, string>> fields
    )
    {
        if (!_tokens.TryGetValue(actor, out var token))
        {
            _tokens[actor] = token = await actor.TokenAsync();
        }

        using var content = new MultipartFormDataContent
        {
            { new StringContent(row.Handler), "_handler" },
            { new StringContent(token), SiteVisit.TokenField },
        };
        foreach (var (name, value) in fields)
        {
            if (SentForm.BytesOf(value) is { } file)
            {
                content.Add(new ByteArrayContent(file), name, "handed-in");
            }
            else
            {
                content.Add(new ByteArrayContent(Bytes(value)), name);
            }
        }

        using HttpRequestMessage request = new(HttpMethod.Post, new Uri(path, UriKind.Relative))
        {
            Content = content,
        };
        return await actor.SendAsync(request);
    }

    // Half of a surrogate pair goes as the bytes that it would have, which are no UTF-8.
    private static byte[] Bytes(string value) =>
        [
            .. value.EnumerateRunes().Any(r => r == Rune.ReplacementChar)
                ? [0xED, 0xA0, 0x80, .. Encoding.UTF8.GetBytes(value)]
                : Encoding.UTF8.GetBytes(value),
        ];

    private List<KeyValuePair<string, string>> Spoil(
        IReadOnlyList<KeyValuePair<string, string>> fields
    )
    {
        List<KeyValuePair<string, string>> spoiled = [.. fields];
        if (spoiled.Count == 0 || _random.Next(25) == 0)
        {
            spoiled.AddRange(
                Enumerable
                    .Range(0, ManyFields)
                    .Select(i =>
                        KeyValuePair.Create(FormattableString.Invariant($"In.Rows[{i}].X"), "1")
                    )
            );
            return spoiled;
        }

        for (var left = _random.Next(1, 4); left > 0 && spoiled.Count > 0; left--)
        {
            var at = _random.Next(spoiled.Count);
            var (name, _) = spoiled[at];
            // Wrong passwords hold the account up, which has tests of its own.
            if (name.EndsWith("Password", StringComparison.Ordinal))
            {
                continue;
            }

            switch (_random.Next(6))
            {
                case 0:
                    spoiled.RemoveAt(at);
                    break;
                case 1:
                    spoiled.Insert(at, KeyValuePair.Create(name, Wrong()));
                    break;
                case 2:
                    spoiled[at] = KeyValuePair.Create(name + "[0].Id", Wrong());
                    break;
                default:
                    spoiled[at] = KeyValuePair.Create(name, Wrong());
                    break;
            }
        }

        return spoiled;
    }

    private string Wrong() => HostileText.Wrong[_random.Next(HostileText.Wrong.Count)];

    private static string Tell(IEnumerable<KeyValuePair<string, string>> fields) =>
        string.Join(
            "; ",
            fields
                .Take(40)
                .Select(f => $"{f.Key}={(f.Value.Length > 40 ? f.Value[..40] + "…" : f.Value)}")
        );

    private async Task RefuseEntriesAsync(bool refuse)
    {
        await ExecuteAsync(
            refuse
                ? """
                CREATE FUNCTION take_no_entry() RETURNS trigger LANGUAGE plpgsql AS
                $$ BEGIN RAISE 'no entry is taken now' USING ERRCODE = '23505', CONSTRAINT = 'none_now'; END $$;
                CREATE TRIGGER take_no_entry BEFORE INSERT ON ledger_entries
                FOR EACH ROW EXECUTE FUNCTION take_no_entry();
                """
                : "DROP FUNCTION take_no_entry CASCADE"
        );
    }

    /// <summary>The number of rows of every table but those of accounts, as one text.</summary>
    private async Task<string> RowsAsync()
    {
        await using var owner = await OwnerAsync();
        await using var command = new NpgsqlCommand(
            """
            SELECT string_agg(c.relname || ' ' || (xpath('/row/n/text()',
                query_to_xml(format('SELECT count(*) AS n FROM %I', c.relname), false, true, '')))[1]::text, ', ' ORDER BY c.relname)
            FROM pg_class c WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r'
            """,
            owner
        );
        return (string)(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken))!;
    }

    private async Task ExecuteAsync(string statement)
    {
        await using var owner = await OwnerAsync();
        await using var command = new NpgsqlCommand(statement, owner);
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }

    private async Task<NpgsqlConnection> OwnerAsync()
    {
        var connections = site.Services.GetRequiredService<IDatabaseConnections>().Current;
        NpgsqlConnection owner = new(connections.Owner);
        await owner.OpenAsync(TestContext.Current.CancellationToken);
        return owner;
    }
}
