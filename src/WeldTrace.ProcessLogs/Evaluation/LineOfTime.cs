using System.Numerics;
using System.Runtime.InteropServices;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>The straight line through samples at even distances by least squares: its slope is the drift.</summary>
internal sealed class LineOfTime
{
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

    private static (double Sum, double Product) Sums(ReadOnlySpan<double> samples, double shift)
    {
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(samples);
        var (sums, products) = (Vector<double>.Zero, Vector<double>.Zero);
        var places = Vector.CreateSequence(0.0, 1.0);
        foreach (var vector in vectors)
        {
            var near = vector - new Vector<double>(shift);
            sums += near;
            products += near * places;
            places += new Vector<double>(Vector<double>.Count);
        }

        var (sum, product) = (Vector.Sum(sums), Vector.Sum(products));
        for (var i = vectors.Length * Vector<double>.Count; i < samples.Length; i++)
        {
            sum += samples[i] - shift;
            product += (samples[i] - shift) * i;
        }

        return (sum, product);
    }
}
