using System.Numerics;
using System.Runtime.Intrinsics;

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
        // Before the first number there are zeros.
        var i = 0;
        for (; i < Math.Min(codes.Length, order); i++)
        {
            steps[i] = ZigZag(Step(codes, i, order));
        }

        for (; i <= codes.Length - Vector<int>.Count; i += Vector<int>.Count)
        {
            ZigZag(Steps(codes, i, order)).CopyTo(steps[i..]);
        }

        for (; i < codes.Length; i++)
        {
            steps[i] = ZigZag(Step(codes, i, order));
        }
    }

    public static void Decode(ReadOnlySpan<uint> steps, int order, Span<int> codes)
    {
        codes = codes[..steps.Length];
        var i = 0;
        for (; i <= steps.Length - Vector<uint>.Count; i += Vector<uint>.Count)
        {
            UnZigZag(new Vector<uint>(steps[i..])).CopyTo(codes[i..]);
        }

        for (; i < steps.Length; i++)
        {
            codes[i] = UnZigZag(steps[i]);
        }

        for (; order > 0; order--)
        {
            Sum(codes);
        }
    }

    // Each number becomes the sum of all up to it. Within eight, sums of two, four and eight don't wait for the eight
    // before; only one addition does.
    private static void Sum(Span<int> numbers)
    {
        var before = Vector256<int>.Zero;
        var i = 0;
        for (; i <= numbers.Length - Vector256<int>.Count; i += Vector256<int>.Count)
        {
            var eight = Vector256.Create<int>(numbers[i..]);
            eight += Vector256.Shuffle(eight, Vector256.Create(8, 0, 1, 2, 3, 4, 5, 6));
            eight += Vector256.Shuffle(eight, Vector256.Create(8, 8, 0, 1, 2, 3, 4, 5));
            eight += Vector256.Shuffle(eight, Vector256.Create(8, 8, 8, 8, 0, 1, 2, 3));
            (eight + before).CopyTo(numbers[i..]);
            before += Vector256.Shuffle(eight, Vector256.Create(7));
        }

        var sum = before[0];
        for (; i < numbers.Length; i++)
        {
            sum = unchecked(sum + numbers[i]);
            numbers[i] = sum;
        }
    }

    private static int Step(ReadOnlySpan<int> codes, int i, int order)
    {
        var one = i > 0 ? codes[i - 1] : 0;
        var two = i > 1 ? codes[i - 2] : 0;
        return unchecked(
            order switch
            {
                0 => codes[i],
                1 => codes[i] - one,
                _ => codes[i] - one - (one - two),
            }
        );
    }

    private static Vector<int> Steps(ReadOnlySpan<int> codes, int i, int order)
    {
        var here = new Vector<int>(codes[i..]);
        if (order == 0)
        {
            return here;
        }

        var one = new Vector<int>(codes[(i - 1)..]);
        return order == 1 ? here - one : here - one - (one - new Vector<int>(codes[(i - 2)..]));
    }

    private static uint ZigZag(int value) => unchecked((uint)((value << 1) ^ (value >> 31)));

    private static Vector<uint> ZigZag(Vector<int> values) =>
        Vector.AsVectorUInt32((values << 1) ^ (values >> 31));

    private static int UnZigZag(uint value) => unchecked((int)(value >> 1) ^ -(int)(value & 1));

    private static Vector<int> UnZigZag(Vector<uint> values) =>
        Vector.AsVectorInt32((values >> 1) ^ (Vector<uint>.Zero - (values & Vector<uint>.One)));

    private static int BitsOf(int value) => 32 - BitOperations.LeadingZeroCount(ZigZag(value));
}
