using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using WeldTrace.Persistence.Attachments;

namespace WeldTrace.Web.Demo;

/// <summary>Scanned papers of the demonstration: PDF files of one page with one line, which says that it is invented.</summary>
internal static class DemoPaper
{
    public static Attachment Of(string line)
    {
        var bytes = Pdf($"{line} Invented for the demonstration.");
        return new Attachment
        {
            Sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes)),
            MediaType = "application/pdf",
            Length = bytes.LongLength,
            Bytes = bytes,
        };
    }

    private static byte[] Pdf(string line)
    {
        var content = $"BT /F 12 Tf 60 760 Td ({Escaped(line)}) Tj ET";
        string[] objects =
        [
            "<< /Type /Catalog /Pages 2 0 R >>",
            "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
            "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R /Resources << /Font << /F 5 0 R >> >> >>",
            $"<< /Length {content.Length} >>\nstream\n{content}\nendstream",
            "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>",
        ];
        var text = new StringBuilder("%PDF-1.4\n");
        List<int> places = [];
        for (var i = 0; i < objects.Length; i++)
        {
            places.Add(text.Length);
            text.Append(CultureInfo.InvariantCulture, $"{i + 1} 0 obj\n{objects[i]}\nendobj\n");
        }

        var table = text.Length;
        text.Append(
            CultureInfo.InvariantCulture,
            $"xref\n0 {objects.Length + 1}\n0000000000 65535 f \n"
        );
        foreach (var place in places)
        {
            text.Append(CultureInfo.InvariantCulture, $"{place:0000000000} 00000 n \n");
        }

        text.Append(
            CultureInfo.InvariantCulture,
            $"trailer << /Size {objects.Length + 1} /Root 1 0 R >>\nstartxref\n{table}\n%%EOF\n"
        );
        return Encoding.ASCII.GetBytes(text.ToString());
    }

    private static string Escaped(string line) =>
        line.Replace("\\", "\\\\", StringComparison.Ordinal)
            .Replace("(", "\\(", StringComparison.Ordinal)
            .Replace(")", "\\)", StringComparison.Ordinal);
}
