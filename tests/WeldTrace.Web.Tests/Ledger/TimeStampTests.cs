using System.Diagnostics;
using System.Net;
using System.Security.Cryptography;
using WeldTrace.Domain.Ledger;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Web.Features.LedgerView.Checkpoints;

namespace WeldTrace.Web.Tests.Ledger;

/// <summary>Time stamps of RFC 3161: OpenSSL is the authority that stamps, and verifies the token again.</summary>
public sealed class TimeStampTests : IDisposable
{
    private const string Authority = """
        [req]
        distinguished_name = name
        x509_extensions = stamping
        prompt = no
        [name]
        CN = Time stamps of a test
        [stamping]
        basicConstraints = critical, CA:FALSE
        keyUsage = critical, digitalSignature
        extendedKeyUsage = critical, timeStamping
        [tsa]
        default_tsa = here
        [here]
        serial = serial
        default_policy = 1.2.3.4.1
        digests = sha256
        signer_digest = sha256
        ordering = yes
        ess_cert_id_chain = no
        ess_cert_id_alg = sha256
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("stamps-").FullName;

    private static DateTimeOffset Now => TimeProvider.System.GetUtcNow();

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Stamp_ByAnAuthority_VerifiesHereAndThere()
    {
        using var http = new HttpClient(new OpenSslAuthority(this));
        var (row, token) = await StampAsync(http);

        Assert.InRange(token.At, Now.AddMinutes(-1), Now);
        Assert.Equal(row.TreeSize, token.TreeSize);
        await WriteAsync("statement.json", row.StatementBytes());
        await WriteAsync("token.der", token.Token);
        Assert.Equal(
            0,
            await OpenSslAsync(
                "ts -verify -token_in -in token.der -data statement.json -CAfile authority.pem"
            )
        );
    }

    [Fact]
    public async Task Stamp_OfAnotherStatement_IsRefused()
    {
        using var http = new HttpClient(new OpenSslAuthority(this, forged: true));

        await Assert.ThrowsAnyAsync<CryptographicException>(() => StampAsync(http));
    }

    [Fact]
    public async Task Stamp_OfAServiceThatFails_IsAFailureThatTheNextTurnMends()
    {
        using var http = new HttpClient(new Failing());

        await Assert.ThrowsAsync<HttpRequestException>(() => StampAsync(http));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static async Task<(CheckpointRow, CheckpointStampRow)> StampAsync(HttpClient http)
    {
        using var key = SiteKey.Create();
        var row = CheckpointRow.Of(
            key.Sign(
                new Checkpoint
                {
                    SiteName = "Test works",
                    TreeSize = 12,
                    RootHex = Convert.ToHexStringLower(MerkleTree.EmptyRoot()),
                    At = Now,
                }
            ),
            key.PublicKey
        );
        var stamp = await new TimeStampService(http).StampAsync(
            row,
            new Uri("http://authority.test/stamp"),
            Cancellation
        );
        return (row, stamp);
    }

    private Task WriteAsync(string name, byte[] bytes) =>
        File.WriteAllBytesAsync(Path.Combine(_folder, name), bytes, Cancellation);

    private async Task<int> OpenSslAsync(string arguments)
    {
        using var openSsl = Process.Start(
            new ProcessStartInfo("openssl", arguments) { WorkingDirectory = _folder }
        )!;
        await openSsl.WaitForExitAsync(Cancellation);
        return openSsl.ExitCode;
    }

    private sealed class OpenSslAuthority(TimeStampTests test, bool forged = false)
        : HttpMessageHandler
    {
        protected override async Task<HttpResponseMessage> SendAsync(
            HttpRequestMessage request,
            CancellationToken cancellationToken
        )
        {
            Assert.Equal(
                "application/timestamp-query",
                request.Content!.Headers.ContentType!.MediaType
            );
            var query = await request.Content.ReadAsByteArrayAsync(cancellationToken);
            if (forged)
            {
                // The hash that is to be stamped stands behind its algorithm; another one is stamped instead.
                query[30] ^= 0xff;
            }

            await test.WriteAsync("authority.cnf", System.Text.Encoding.ASCII.GetBytes(Authority));
            await test.WriteAsync("serial", "01\n"u8.ToArray());
            await test.WriteAsync("query.tsq", query);
            Assert.Equal(
                0,
                await test.OpenSslAsync(
                    "req -x509 -newkey rsa:2048 -nodes -keyout key.pem -out authority.pem -days 2 -config authority.cnf"
                )
            );
            Assert.Equal(
                0,
                await test.OpenSslAsync(
                    "ts -reply -queryfile query.tsq -signer authority.pem -inkey key.pem -out answer.tsr -config authority.cnf -section here"
                )
            );
            return new HttpResponseMessage(HttpStatusCode.OK)
            {
                Content = new ByteArrayContent(
                    await File.ReadAllBytesAsync(
                        Path.Combine(test._folder, "answer.tsr"),
                        cancellationToken
                    )
                ),
            };
        }
    }

    private sealed class Failing : HttpMessageHandler
    {
        protected override Task<HttpResponseMessage> SendAsync(
            HttpRequestMessage request,
            CancellationToken cancellationToken
        ) => Task.FromResult(new HttpResponseMessage(HttpStatusCode.ServiceUnavailable));
    }
}
