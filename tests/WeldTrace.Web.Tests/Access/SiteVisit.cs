using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Somebody with cookies of their own, who follows no redirect and so sees every answer.</summary>
internal sealed class SiteVisit : IDisposable
{
    public const string TokenField = "__RequestVerificationToken";

    private readonly HttpClient _http;
    private string? _token;
    private string? _name;

    public SiteVisit(Uri site)
    {
        _http = new HttpClient(
            new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = Cookies }
        )
        {
            BaseAddress = site,
        };
    }

    public Uri Site => _http.BaseAddress!;

    public CookieContainer Cookies { get; } = new();

    /// <summary>How the visitor reached the proxy in front of the site.</summary>
    public string Scheme
    {
        init => _http.DefaultRequestHeaders.Add("X-Forwarded-Proto", value);
    }

    /// <summary>The address from which the visitor reached that proxy.</summary>
    public string From
    {
        init => _http.DefaultRequestHeaders.Add("X-Forwarded-For", value);
    }

    /// <summary>Whether the server is asked before a body is sent, so that its refusal is heard.</summary>
    public bool AsksFirst
    {
        init => _http.DefaultRequestHeaders.ExpectContinue = value;
    }

    /// <param name="name">Sign-in name.</param>
    /// <param name="password">Password.</param>
    /// <param name="namesItself">Whether the tests give the name at a signature, which is otherwise given by itself.</param>
    public async Task SignInAsync(string name, string password, bool namesItself = false)
    {
        var answer = await PostAsync(
            Routes.SignIn,
            "sign-in",
            [new("In.Name", name), new("In.Password", password)]
        );
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        _name = namesItself ? null : name;
        // The token of a form belongs to whoever was signed in when it was given out.
        _token = null;
    }

    public Task<HttpResponseMessage> GetAsync(string path) =>
        _http.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);

    /// <summary>Sends what no form would send.</summary>
    public Task<HttpResponseMessage> SendAsync(HttpRequestMessage request) =>
        _http.SendAsync(request, TestContext.Current.CancellationToken);

    /// <summary>Posts a form with an anti-forgery token that belongs to this person.</summary>
    public async Task<HttpResponseMessage> PostAsync(
        string path,
        string? form,
        IEnumerable<KeyValuePair<string, string>> fields
    )
    {
        _token ??= await TokenAsync();
        return await PostBareAsync(path, form, Named([.. fields]).Append(new(TokenField, _token)));
    }

    // Whoever signs for the first time gives the sign-in name beside the password.
    private IEnumerable<KeyValuePair<string, string>> Named(
        IReadOnlyList<KeyValuePair<string, string>> fields
    )
    {
        const string name = "." + ISigningSession.Field;
        var signing = fields.FirstOrDefault(f =>
            f.Key.EndsWith(".Password", StringComparison.Ordinal)
        );
        return _name is null || signing.Key is null || fields.Any(f => IsName(f) && f.Value != "")
            ? fields
            :
            [
                .. fields.Where(f => !IsName(f)),
                new(signing.Key.Replace(".Password", name, StringComparison.Ordinal), _name),
            ];

        static bool IsName(KeyValuePair<string, string> field) =>
            field.Key.EndsWith(name, StringComparison.Ordinal);
    }

    /// <summary>Posts a form as it is, without a token.</summary>
    public async Task<HttpResponseMessage> PostBareAsync(
        string path,
        string? form,
        IEnumerable<KeyValuePair<string, string>> fields
    )
    {
        IEnumerable<KeyValuePair<string, string>> handler = form is null
            ? []
            : [new("_handler", form)];
        using var content = new MultipartFormDataContent();
        foreach (var (name, value) in handler.Concat(fields))
        {
            if (SentForm.BytesOf(value) is { } file)
            {
                content.Add(new ByteArrayContent(file), name, "handed-in");
            }
            else
            {
                content.Add(new StringContent(value), name);
            }
        }

        return await _http.PostAsync(
            new Uri(path, UriKind.Relative),
            content,
            TestContext.Current.CancellationToken
        );
    }

    /// <summary>Brings a file to an address that reads it as it arrives: its token comes before it.</summary>
    public async Task<HttpResponseMessage> BringAsync(string path, byte[] file)
    {
        _token ??= await TokenAsync();
        using var content = new MultipartFormDataContent
        {
            { new StringContent(_token), TokenField },
            { new ByteArrayContent(file), "file", "log.csv" },
        };
        return await _http.PostAsync(
            new Uri(path, UriKind.Relative),
            content,
            TestContext.Current.CancellationToken
        );
    }

    // Every page has a form: the one to sign in with, or the one in its head to sign out with.
    public async Task<string> TokenAsync()
    {
        var answer = await GetAsync(Routes.SignIn);
        if (answer.Headers.Location is { } elsewhere)
        {
            answer = await GetAsync(new Uri(Site, elsewhere).PathAndQuery);
        }

        var page = await PageAsync(answer);
        return page.QuerySelector($"input[name={TokenField}]")?.GetAttribute("value")
            ?? throw new InvalidOperationException("The page has no anti-forgery token.");
    }

    public static async Task<IHtmlDocument> PageAsync(HttpResponseMessage answer) =>
        await new HtmlParser().ParseDocumentAsync(
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)
        );

    public void Dispose() => _http.Dispose();
}
