using System.Numerics;
using System.Runtime.InteropServices;

namespace WeldTrace.Engineering.Signals;

/// <summary>
/// How many samples at the start of a batch need no closer look, as many at once as the processor takes. Each
/// comparison is the one that judges a single sample, so that a batch and its samples one by one give the same.
/// </summary>
public static class LeadingSamples
{
    /// <summary>Leading samples that are neither below the lower nor above the upper limit.</summary>
    public static int Inside(ReadOnlySpan<double> samples, double lower, double upper)
    {
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(samples);
        var (lows, highs) = (new Vector<double>(lower), new Vector<double>(upper));
        var calm = 0;
        while (
            calm < vectors.Length
            && !Vector.LessThanAny(vectors[calm], lows)
            && !Vector.GreaterThanAny(vectors[calm], highs)
        )
        {
            calm++;
        }

        var count = calm * Vector<double>.Count;
        while (count < samples.Length && !(samples[count] < lower) && !(samples[count] > upper))
        {
            count++;
        }

        return count;
    }

    /// <summary>
    /// Leading samples none of which begins a stretch of five or more equal ones; a few of those that begin none may be left out.
    /// </summary>
    public static int Restless<T>(ReadOnlySpan<T> samples)
        where T : struct
    {
        ref var first = ref MemoryMarshal.GetReference(samples);
        var count = 0;
        for (; count <= samples.Length - Vector<T>.Count - 4; count += Vector<T>.Count)
        {
            var at = (nuint)count;
            var second = Vector.LoadUnsafe(ref first, at + 1);
            var third = Vector.LoadUnsafe(ref first, at + 2);
            var fourth = Vector.LoadUnsafe(ref first, at + 3);
            var equal =
                Vector.Equals(Vector.LoadUnsafe(ref first, at), second)
                & Vector.Equals(second, third)
                & Vector.Equals(third, fourth)
                & Vector.Equals(fourth, Vector.LoadUnsafe(ref first, at + 4));
            if (equal != Vector<T>.Zero)
            {
                break;
            }
        }

        return count;
    }

    /// <summary>Leading samples at a level or above it; NaN is not.</summary>
    public static int AtLeast(ReadOnlySpan<double> samples, double level)
    {
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(samples);
        var levels = new Vector<double>(level);
        var calm = 0;
        while (calm < vectors.Length && Vector.GreaterThanOrEqualAll(vectors[calm], levels))
        {
            calm++;
        }

        var count = calm * Vector<double>.Count;
        while (count < samples.Length && samples[count] >= level)
        {
            count++;
        }

        return count;
    }
}
