using System.Numerics;
using System.Runtime.InteropServices;

namespace WeldTrace.ProcessLogs.Storage;

/// <summary>Smallest and largest of many numbers, as many at once as the processor takes.</summary>
internal static class Extremes
{
    /// <param name="numbers">One or more.</param>
    public static (T Minimum, T Maximum) Of<T>(ReadOnlySpan<T> numbers)
        where T : struct, INumber<T>
    {
        var (minimum, maximum) = (numbers[0], numbers[0]);
        var vectors = MemoryMarshal.Cast<T, Vector<T>>(numbers);
        if (vectors.Length > 1)
        {
            var (least, greatest) = (vectors[0], vectors[0]);
            foreach (ref readonly var vector in vectors[1..])
            {
                least = Vector.Min(least, vector);
                greatest = Vector.Max(greatest, vector);
            }

            for (var i = 0; i < Vector<T>.Count; i++)
            {
                minimum = T.Min(minimum, least[i]);
                maximum = T.Max(maximum, greatest[i]);
            }

            numbers = numbers[(vectors.Length * Vector<T>.Count)..];
        }

        foreach (var number in numbers)
        {
            minimum = T.Min(minimum, number);
            maximum = T.Max(maximum, number);
        }

        return (minimum, maximum);
    }
}
