namespace WeldTrace.Engineering.Statistics;

/// <summary>The bare numbers of a least-squares line; whoever asks has checked the points and refuses numbers that are none.</summary>
internal readonly record struct LeastSquares(double Slope, double Start, double StandardError)
{
    public static LeastSquares Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        var (meanX, meanY) = (x.Average(), y.Average());
        var spread = x.Sum(v => (v - meanX) * (v - meanX));
        var slope = x.Zip(y, (a, b) => (a - meanX) * (b - meanY)).Sum() / spread;
        var start = meanY - (slope * meanX);
        var squares = x.Zip(y, (a, b) => Math.Pow(b - start - (slope * a), 2)).Sum();
        return new(slope, start, Math.Sqrt(squares / (x.Count - 2) / spread));
    }
}
