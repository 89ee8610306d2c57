using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;
using WeldTrace.Persistence.LedgerStore;

namespace WeldTrace.Web.Features.LedgerView.Checkpoints;

/// <summary>Asks a service of RFC 3161 to say when a checkpoint existed.</summary>
public sealed class TimeStampService(HttpClient http)
{
    private const int LongestAnswer = 64 * 1024;
    private const int NonceBytes = 16;

    /// <summary>A stamp over the checkpoint's statement.</summary>
    /// <exception cref="HttpRequestException">The service does not answer.</exception>
    /// <exception cref="CryptographicException">The answer is no stamp of this checkpoint.</exception>
    public async Task<CheckpointStampRow> StampAsync(
        CheckpointRow checkpoint,
        Uri service,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(checkpoint);
        ArgumentNullException.ThrowIfNull(service);
        var request = Rfc3161TimestampRequest.CreateFromData(
            checkpoint.StatementBytes(),
            HashAlgorithmName.SHA256,
            nonce: RandomNumberGenerator.GetBytes(NonceBytes),
            requestSignerCertificates: true
        );
        var answer = await AskAsync(request, service, cancellation);
        var token = request.ProcessResponse(answer, out _);
        if (!token.VerifySignatureForData(checkpoint.StatementBytes(), out _))
        {
            throw new CryptographicException("The time stamp does not fit the checkpoint.");
        }

        return new CheckpointStampRow
        {
            TreeSize = checkpoint.TreeSize,
            At = Domain.Ledger.LedgerTime.Normalise(token.TokenInfo.Timestamp),
            Service = service.GetLeftPart(UriPartial.Path),
            Token = token.AsSignedCms().Encode(),
        };
    }

    private async Task<byte[]> AskAsync(
        Rfc3161TimestampRequest request,
        Uri service,
        CancellationToken cancellation
    )
    {
        using var content = new ByteArrayContent(request.Encode());
        content.Headers.ContentType = new MediaTypeHeaderValue("application/timestamp-query");
        using var response = await http.PostAsync(service, content, cancellation);
        response.EnsureSuccessStatusCode();
        await response.Content.LoadIntoBufferAsync(LongestAnswer, cancellation);
        return await response.Content.ReadAsByteArrayAsync(cancellation);
    }
}
