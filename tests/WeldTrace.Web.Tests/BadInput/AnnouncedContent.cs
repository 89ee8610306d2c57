using System.Net;
using System.Net.Http.Headers;

namespace WeldTrace.Web.Tests.BadInput;

/// <summary>A body that announces its length, and counts how much of it anybody wanted.</summary>
internal sealed class AnnouncedContent : HttpContent
{
    private readonly long _length;

    public AnnouncedContent(long length)
    {
        _length = length;
        Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=parts");
    }

    public long BytesSent { get; private set; }

    protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
    {
        var buffer = new byte[64 * 1024];
        while (BytesSent < _length)
        {
            await stream.WriteAsync(buffer);
            BytesSent += buffer.Length;
        }
    }

    protected override bool TryComputeLength(out long length)
    {
        length = _length;
        return true;
    }
}
