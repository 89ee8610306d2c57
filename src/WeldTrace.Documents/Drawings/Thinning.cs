namespace WeldTrace.Documents.Drawings;

/// <summary>Reduces a channel to the least and the greatest sample of each bin, so that no extreme is lost.</summary>
internal static class Thinning
{
    /// <summary>Runs of (time, value); a gap of missing samples parts two runs.</summary>
    public static IReadOnlyList<IReadOnlyList<(double Time, double Value)>> MinMax(
        IReadOnlyList<double> times,
        IReadOnlyList<double> values,
        int bins
    )
    {
        var runs = new List<IReadOnlyList<(double, double)>>();
        var count = Math.Min(times.Count, values.Count);
        if (count == 0)
        {
            return runs;
        }

        var width = (times[count - 1] - times[0]) / bins;
        for (var i = 0; i < count; )
        {
            if (!double.IsFinite(values[i]))
            {
                i++;
                continue;
            }

            var run = new List<(double, double)>();
            while (i < count && double.IsFinite(values[i]))
            {
                i = TakeBin(times, values, i, count, width, run);
            }

            runs.Add(run);
        }

        return runs;
    }

    private static int TakeBin(
        IReadOnlyList<double> times,
        IReadOnlyList<double> values,
        int first,
        int count,
        double width,
        List<(double, double)> run
    )
    {
        var end =
            width > 0
                ? times[0] + ((Math.Floor((times[first] - times[0]) / width) + 1) * width)
                : times[first];
        var (least, greatest, last) = (first, first, first);
        for (var i = first + 1; i < count && times[i] < end && double.IsFinite(values[i]); i++)
        {
            least = values[i] < values[least] ? i : least;
            greatest = values[i] > values[greatest] ? i : greatest;
            last = i;
        }

        run.Add(Sample(Math.Min(least, greatest)));
        if (least != greatest)
        {
            run.Add(Sample(Math.Max(least, greatest)));
        }

        return last + 1;

        (double, double) Sample(int i) => (times[i], values[i]);
    }
}
