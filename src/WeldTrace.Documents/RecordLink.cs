using System.Text;
using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents;

/// <summary>The record's address as a QR code with the address in text below.</summary>
internal static class RecordLink
{
    public static Block Of(string address)
    {
        var text = new Paragraph(address, Styles.Small);
        return Encoding.UTF8.GetByteCount(address) > QrDrawing.MostBytes
            ? text
            : new Stack([new Figure(new QrDrawing(address), widest: 96), text]);
    }
}
