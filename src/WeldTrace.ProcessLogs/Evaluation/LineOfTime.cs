using System.Numerics;
using System.Runtime.InteropServices;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>The straight line through samples at even distances by least squares: its slope is the drift.</summary>
internal sealed class LineOfTime
{
    private const int Wide = 4;

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
        var (sum, product) = Sums(samples, _shift);
        _product += product + (_count * sum);
        _sum += sum;
        _count += samples.Length;
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
