using System.Text;

namespace WeldTrace.ProcessLogs.Reading;

internal static class LogEncodingText
{
    public static Encoding ToText(this LogEncoding encoding) =>
        encoding switch
        {
            LogEncoding.Utf16LittleEndian => Encoding.Unicode,
            LogEncoding.Utf16BigEndian => Encoding.BigEndianUnicode,
            LogEncoding.Latin1 => Encoding.Latin1,
            _ => Encoding.UTF8,
        };
}
