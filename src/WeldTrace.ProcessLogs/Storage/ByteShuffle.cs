using System.Buffers.Binary;
using System.Numerics;

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
        var i = 0;
        for (; i <= n - Vector<byte>.Count; i += Vector<byte>.Count)
        {
            var (low, high) = Halves(elements[i..]);
            var (low2, high2) = Halves(elements[(i + Vector<ushort>.Count)..]);
            Vector.Narrow(low, low2).CopyTo(p0[i..]);
            Vector.Narrow(low >> 8, low2 >> 8).CopyTo(p1[i..]);
            Vector.Narrow(high, high2).CopyTo(p2[i..]);
            Vector.Narrow(high >> 8, high2 >> 8).CopyTo(p3[i..]);
        }

        for (; i < n; i++)
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
        var i = 0;
        for (; i <= n - Vector<byte>.Count; i += Vector<byte>.Count)
        {
            var (low, low2) = Pairs(new(p0[i..]), new(p1[i..]));
            var (high, high2) = Pairs(new(p2[i..]), new(p3[i..]));
            Store(low, high, elements[i..]);
            Store(low2, high2, elements[(i + Vector<ushort>.Count)..]);
        }

        for (; i < n; i++)
        {
            elements[i] = p0[i] | ((uint)p1[i] << 8) | ((uint)p2[i] << 16) | ((uint)p3[i] << 24);
        }
    }

    private static (Vector<ushort> Low, Vector<ushort> High) Halves(ReadOnlySpan<uint> elements)
    {
        var first = new Vector<uint>(elements);
        var second = new Vector<uint>(elements[Vector<uint>.Count..]);
        return (Vector.Narrow(first, second), Vector.Narrow(first >> 16, second >> 16));
    }

    private static (Vector<ushort> First, Vector<ushort> Second) Pairs(
        Vector<byte> low,
        Vector<byte> high
    )
    {
        Vector.Widen(low, out var low1, out var low2);
        Vector.Widen(high, out var high1, out var high2);
        return (low1 | (high1 << 8), low2 | (high2 << 8));
    }

    private static void Store(Vector<ushort> low, Vector<ushort> high, Span<uint> elements)
    {
        Vector.Widen(low, out var low1, out var low2);
        Vector.Widen(high, out var high1, out var high2);
        (low1 | (high1 << 16)).CopyTo(elements);
        (low2 | (high2 << 16)).CopyTo(elements[Vector<uint>.Count..]);
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
