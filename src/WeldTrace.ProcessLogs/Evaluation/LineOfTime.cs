using System.Numerics;
using System.Runtime.InteropServices;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>The straight line through samples at even distances by least squares: its slope is the drift.</summary>
internal sealed class LineOfTime
{
    private const int Wide = 4;
    private const int Block = 4096;

    private double _count;
    private double _sum;
    private double _product;
    private double _shift = double.NaN;

    /// <summary>Change per sample; none for fewer than two samples.</summary>
    public double? SlopePerSample
    {
        get
        {
            var spread = _count * ((_count * _count) - 1) / 12;
            return spread > 0 ? (_product - ((_count - 1) / 2 * _sum)) / spread : null;
        }
    }

    public void Add(ReadOnlySpan<double> samples)
    {
        if (samples.IsEmpty)
        {
            return;
        }

        // Near zero, so that the sums keep their digits.
        _shift = double.IsNaN(_shift) ? samples[0] : _shift;
        Add(samples.Length, Sums(samples, _shift));
    }

    /// <summary>The same of whole numbers, in whole numbers.</summary>
    public void Add(ReadOnlySpan<int> samples)
    {
        for (; !samples.IsEmpty; samples = samples[Math.Min(Block, samples.Length)..])
        {
            _shift = double.IsNaN(_shift) ? samples[0] : _shift;
            var block = samples[..Math.Min(Block, samples.Length)];
            var (sum, product) = WholeSums(block);
            var places = (block.Length - 1.0) * block.Length / 2;
            Add(block.Length, (sum - (_shift * block.Length), product - (_shift * places)));
        }
    }

    private void Add(int count, (double Sum, double Product) found)
    {
        _product += found.Product + (_count * found.Sum);
        _sum += found.Sum;
        _count += count;
    }

    /// <summary>Sum of the samples, and of each times its place: exact, for a block's products fit 64 bits.</summary>
    private static (double Sum, double Product) WholeSums(ReadOnlySpan<int> samples)
    {
        var vectors = MemoryMarshal.Cast<int, Vector<int>>(samples);
        var later = Vector<long>.Zero;
        var (first, second) = (
            Vector.CreateSequence(0L, 1L),
            Vector.CreateSequence((long)Vector<long>.Count, 1L)
        );
        var (lows, highs) = (Vector<long>.Zero, Vector<long>.Zero);
        foreach (ref readonly var vector in vectors)
        {
            Vector.Widen(vector, out var low, out var high);
            (lows, highs) = (lows + low, highs + high);
            later += lows + highs;
        }

        var within = (lows * first) + (highs * second);
        var (sum, width) = (Vector.Sum(lows + highs), Vector<int>.Count);
        // Each running sum was added once per vector from its own on: so often it is missing from the end.
        var product = Vector.Sum(within) + (width * ((vectors.Length * sum) - Vector.Sum(later)));
        for (var rest = vectors.Length * width; rest < samples.Length; rest++)
        {
            sum += samples[rest];
            product += (long)samples[rest] * rest;
        }

        return (sum, product);
    }

    /// <summary>
    /// Sum of the samples, and of each times its place. Four vectors at once: what lies before them counts by its
    /// running sum, so that only places within the four are multiplied.
    /// </summary>
    private static (double Sum, double Product) Sums(ReadOnlySpan<double> samples, double shift)
    {
        var width = Vector<double>.Count;
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(samples);
        var (near, places) = (new Vector<double>(shift), Vector.CreateSequence(0.0, 1.0));
        var (first, second) = (
            places + new Vector<double>(width),
            places + new Vector<double>(2 * width)
        );
        var third = places + new Vector<double>(3 * width);
        var (sums, later, within, beside) = (
            Vector<double>.Zero,
            Vector<double>.Zero,
            Vector<double>.Zero,
            Vector<double>.Zero
        );
        var i = 0;
        for (; i <= vectors.Length - Wide; i += Wide)
        {
            var (a, b) = (vectors[i] - near, vectors[i + 1] - near);
            var (c, d) = (vectors[i + 2] - near, vectors[i + 3] - near);
            within += (a * places) + (b * first);
            beside += (c * second) + (d * third);
            sums += (a + b) + (c + d);
            later += sums;
        }

        var (sum, block) = (Vector.Sum(sums), Wide * width);
        var count = i * width;
        // Each running sum was added once per block from its own on: so often it is missing from the end.
        var product =
            Vector.Sum(within + beside) + (((double)count * sum) - (block * Vector.Sum(later)));
        for (var rest = count; rest < samples.Length; rest++)
        {
            sum += samples[rest] - shift;
            product += (samples[rest] - shift) * rest;
        }

        return (sum, product);
    }
}
