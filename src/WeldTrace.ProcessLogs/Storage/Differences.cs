using System.Numerics;

namespace WeldTrace.ProcessLogs.Storage;

/// <summary>Whole numbers as they are, as differences, or as differences of differences; wraps, so never loses.</summary>
internal static class Differences
{
    private const int Sampled = 1024;

    /// <summary>The order, 0 to 2, that leaves the fewest bits in the first numbers.</summary>
    public static int BestOrder(ReadOnlySpan<int> codes)
    {
        Span<long> bits = stackalloc long[3];
        var (previous, previousStep) = (0, 0);
        foreach (var code in codes[..Math.Min(codes.Length, Sampled)])
        {
            var step = unchecked(code - previous);
            bits[0] += BitsOf(code);
            bits[1] += BitsOf(step);
            bits[2] += BitsOf(unchecked(step - previousStep));
            (previous, previousStep) = (code, step);
        }

        return bits[0] <= bits[1] && bits[0] <= bits[2] ? 0
            : bits[1] <= bits[2] ? 1
            : 2;
    }

    public static void Encode(ReadOnlySpan<int> codes, int order, Span<uint> steps)
    {
        var (previous, previousStep) = (0, 0);
        for (var i = 0; i < codes.Length; i++)
        {
            var step = unchecked(codes[i] - (order > 0 ? previous : 0));
            steps[i] = ZigZag(unchecked(step - (order > 1 ? previousStep : 0)));
            (previous, previousStep) = (codes[i], step);
        }
    }

    public static void Decode(ReadOnlySpan<uint> steps, int order, Span<int> codes)
    {
        codes = codes[..steps.Length];
        for (var i = 0; i < steps.Length; i++)
        {
            codes[i] = UnZigZag(steps[i]);
        }

        for (; order > 0; order--)
        {
            var code = 0;
            foreach (ref var sum in codes)
            {
                code = unchecked(code + sum);
                sum = code;
            }
        }
    }

    private static uint ZigZag(int value) => unchecked((uint)((value << 1) ^ (value >> 31)));

    private static int UnZigZag(uint value) => unchecked((int)(value >> 1) ^ -(int)(value & 1));

    private static int BitsOf(int value) => 32 - BitOperations.LeadingZeroCount(ZigZag(value));
}
