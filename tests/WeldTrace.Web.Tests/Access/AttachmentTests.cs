using System.Net;
using System.Security.Cryptography;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Files came from outside: whatever they are, they run nothing, and only photographs are shown in the page.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class AttachmentTests(DemoSite site)
{
    [Theory]
    [InlineData("image/jpeg", "image/jpeg", false)]
    [InlineData("image/png", "image/png", false)]
    [InlineData("application/pdf", "application/octet-stream", true)]
    [InlineData("text/html", "application/octet-stream", true)]
    [InlineData("image/svg+xml", "application/octet-stream", true)]
    [InlineData("text/csv", "application/octet-stream", true)]
    public async Task File_OfAKind_IsShownOnlyIfItIsAPhotograph(
        string kept,
        string sent,
        bool isDownload
    )
    {
        var bytes = System.Text.Encoding.UTF8.GetBytes($"<script>alert('{kept}')</script>");
        var sha256 = await KeepAsync(bytes, kept);
        var auditor = await site.VisitAsync(DemoPeople.Auditor);

        var answer = await auditor.GetAsync(Routes.Attachment(sha256));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(sent, answer.Content.Headers.ContentType?.ToString());
        Assert.Equal(
            isDownload ? "attachment" : null,
            answer.Content.Headers.ContentDisposition?.DispositionType
        );
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal(
            "default-src 'none'; base-uri 'none'; frame-ancestors 'none'; sandbox",
            answer.Headers.GetValues("Content-Security-Policy").Single()
        );
        Assert.Equal(
            bytes,
            await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)
        );
    }

    [Theory]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000")]
    [InlineData("..%2F..%2Fetc%2Fpasswd")]
    [InlineData("ABCDEF")]
    public async Task File_ThatIsNotThere_IsNotFound(string sha256)
    {
        var auditor = await site.VisitAsync(DemoPeople.Auditor);

        var answer = await auditor.GetAsync($"/attachments/{sha256}");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private async Task<string> KeepAsync(byte[] bytes, string mediaType)
    {
        var sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes));
        await site.ReadAsync(async db =>
        {
            db.Add(
                new Attachment
                {
                    Sha256 = sha256,
                    MediaType = mediaType,
                    Length = bytes.Length,
                    Bytes = bytes,
                }
            );
            return await db.SaveAsync(CancellationToken.None);
        });
        return sha256;
    }
}
