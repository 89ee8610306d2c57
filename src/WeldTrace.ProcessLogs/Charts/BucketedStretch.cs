namespace WeldTrace.ProcessLogs.Charts;

/// <summary>A stretch of samples cut into buckets of equally many; the last may be short.</summary>
/// <param name="First">Index of its first sample.</param>
/// <param name="Count">Samples; one or more.</param>
/// <param name="PerBucket">Samples of a bucket.</param>
internal readonly record struct BucketedStretch(long First, long Count, long PerBucket)
{
    public int Buckets => (int)((Count + PerBucket - 1) / PerBucket);
}

/// <summary>Smallest and largest sample of each bucket, in the unit as logged.</summary>
internal readonly record struct BucketExtremes(double[] Minima, double[] Maxima)
{
    public static BucketExtremes None(int buckets)
    {
        var none = new BucketExtremes(new double[buckets], new double[buckets]);
        Array.Fill(none.Minima, double.PositiveInfinity);
        Array.Fill(none.Maxima, double.NegativeInfinity);
        return none;
    }

    public void Add(long bucket, double minimum, double maximum)
    {
        Minima[bucket] = Math.Min(Minima[bucket], minimum);
        Maxima[bucket] = Math.Max(Maxima[bucket], maximum);
    }
}
