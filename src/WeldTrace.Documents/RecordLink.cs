using System.Text;
using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents;

/// <summary>The record's address as a QR code with the address in text below.</summary>
internal static class RecordLink
{
    private const double QrWidth = 96;

    public static Block Of(string address)
    {
        Block text = IsWebAddress(address)
            ? new LinkText(address)
            : new Paragraph(address, Styles.Small);
        return Encoding.UTF8.GetByteCount(address) > QrDrawing.MostBytes
            ? text
            : new Stack([new Figure(new QrDrawing(address), widest: QrWidth), text]);
    }

    private static bool IsWebAddress(string address) =>
        Uri.TryCreate(address, UriKind.Absolute, out var uri)
        && (uri.Scheme == Uri.UriSchemeHttps || uri.Scheme == Uri.UriSchemeHttp)
        && address.All(char.IsAscii);
}
