using System.Buffers.Binary;

namespace WeldTrace.ProcessLogs.Storage;

/// <summary>Puts the first bytes of all elements side by side, then the second ones, and so on.</summary>
internal static class ByteShuffle
{
    public static void Split(ReadOnlySpan<uint> elements, Span<byte> planes)
    {
        var n = elements.Length;
        var p0 = planes[..n];
        var p1 = planes.Slice(n, n);
        var p2 = planes.Slice(2 * n, n);
        var p3 = planes.Slice(3 * n, n);
        for (var i = 0; i < n; i++)
        {
            var element = elements[i];
            p0[i] = (byte)element;
            p1[i] = (byte)(element >> 8);
            p2[i] = (byte)(element >> 16);
            p3[i] = (byte)(element >> 24);
        }
    }

    public static void Join(ReadOnlySpan<byte> planes, Span<uint> elements)
    {
        var n = elements.Length;
        var p0 = planes[..n];
        var p1 = planes.Slice(n, n);
        var p2 = planes.Slice(2 * n, n);
        var p3 = planes.Slice(3 * n, n);
        for (var i = 0; i < n; i++)
        {
            elements[i] = p0[i] | ((uint)p1[i] << 8) | ((uint)p2[i] << 16) | ((uint)p3[i] << 24);
        }
    }

    public static void Split(ReadOnlySpan<double> elements, Span<byte> planes)
    {
        Span<byte> bytes = stackalloc byte[sizeof(double)];
        for (var i = 0; i < elements.Length; i++)
        {
            BinaryPrimitives.WriteDoubleLittleEndian(bytes, elements[i]);
            for (var plane = 0; plane < sizeof(double); plane++)
            {
                planes[(plane * elements.Length) + i] = bytes[plane];
            }
        }
    }

    public static void Join(ReadOnlySpan<byte> planes, Span<double> elements)
    {
        Span<byte> bytes = stackalloc byte[sizeof(double)];
        for (var i = 0; i < elements.Length; i++)
        {
            for (var plane = 0; plane < sizeof(double); plane++)
            {
                bytes[plane] = planes[(plane * elements.Length) + i];
            }

            elements[i] = BinaryPrimitives.ReadDoubleLittleEndian(bytes);
        }
    }
}
