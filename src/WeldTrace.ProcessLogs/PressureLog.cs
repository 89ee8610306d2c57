using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.ProcessLogs.Charts;

namespace WeldTrace.ProcessLogs;

/// <summary>Either the samples of a bench logger, or the reasons why the file can't be taken.</summary>
/// <param name="Trace">Samples in order of time, from zero; null when refused.</param>
/// <param name="Sha256">SHA-256 of the file; empty when refused.</param>
/// <param name="Problems">What is wrong; empty when it was taken.</param>
public sealed record PressureLogResult(
    PressureTrace? Trace,
    string Sha256,
    IReadOnlyList<LogProblem> Problems
);

/// <summary>
/// Reads the file of a bench logger: time, gauge pressure and, if there are any, temperatures of vessel and room. Takes every dialect that
/// the process log takes, and refuses what would make a reading doubtful: gaps, a clock that was put back, a unit that changed.
/// </summary>
public static class PressureLog
{
    /// <summary>Longest file that is taken, 20 MB.</summary>
    public const long MostBytes = 20L * 1024 * 1024;

    private const int FewestSamples = 2;

    /// <summary>Times the usual step between two samples that make a gap.</summary>
    private const double GapSteps = 10;

    /// <summary>Steps below this many seconds are never a gap.</summary>
    private const double ShortestGapSeconds = 5;

    /// <summary>How near a step comes to the ratio of two units.</summary>
    private const double NearRatio = 0.1;

    /// <summary>Ratios of the units in use: psi and kPa, bar and MPa, bar and psi, bar and kPa, MPa and psi, bar and mbar.</summary>
    private static readonly double[] UnitRatios = [6.895, 10, 14.504, 100, 145.04, 1000];

    /// <summary>Reads a whole file. The stream must be seekable; it is left open.</summary>
    public static async Task<PressureLogResult> ReadAsync(
        Stream stream,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        var options = new LogReadOptions
        {
            LengthLimitBytes = MostBytes,
            MinimumRows = FewestSamples,
        };
        var looked = await LogPreview.ReadAsync(stream, options, cancellation);
        if (looked.Preview is not { } preview)
        {
            return Refused(looked.Problems);
        }

        if (Missing(preview.Guess) is { } missing)
        {
            return Refused([missing]);
        }

        stream.Position = 0;
        var read = await ProcessLogReader.ReadAsync(stream, preview.Guess, options, cancellation);
        if (read.Log is not { } log)
        {
            return Refused(read.Problems);
        }

        var samples = Samples(log);
        var problems = Doubtful(samples, log);
        return problems.Count > 0
            ? Refused(problems)
            : new(new PressureTrace(samples), log.Header.OriginalSha256, []);
    }

    private static PressureLogResult Refused(IReadOnlyList<LogProblem> problems) =>
        new(null, "", problems);

    private static LogProblem? Missing(LogMapping mapping)
    {
        foreach (var channel in new[] { LogChannel.Time, LogChannel.GaugePressure })
        {
            if (mapping.Columns.All(c => c.Channel != channel))
            {
                return new LogProblem(
                    LogProblemCode.MissingColumn,
                    $"No column seems to be the {LogChannels.NameOf(channel)}.",
                    channel == LogChannel.Time
                        ? "Name a column 'Time' with its unit, for instance 'Time [s]'."
                        : "Name a column 'Pressure' with its unit, for instance 'Pressure [bar]'; gauge pressure, not absolute."
                );
            }
        }

        return null;
    }

    private static List<TraceSample> Samples(ProcessLog log)
    {
        using var access = new SampleAccess(log);
        var (count, first) = ((int)log.Header.SampleCount, log.Header.StartSeconds);
        var time = Column(log, access, LogChannel.Time)!;
        var pressure = Column(log, access, LogChannel.GaugePressure)!;
        var vessel = Column(log, access, LogChannel.VesselTemperature);
        var ambient = Column(log, access, LogChannel.AmbientTemperature);
        List<TraceSample> samples = new(count);
        for (var i = 0; i < count; i++)
        {
            samples.Add(
                new TraceSample(
                    TimeSpan.FromSeconds(time[i] - first),
                    Pressure.FromPascals(pressure[i]),
                    vessel is null ? null : Temperature.FromKelvin(vessel[i]),
                    ambient is null ? null : Temperature.FromKelvin(ambient[i])
                )
            );
        }

        return samples;
    }

    private static double[]? Column(ProcessLog log, SampleAccess access, LogChannel channel)
    {
        if (log.Header.Columns.FirstOrDefault(c => c.Channel == channel) is not { } column)
        {
            return null;
        }

        var values = new double[log.Header.SampleCount];
        for (var at = 0; at < values.Length; )
        {
            var chunk = access.Chunk(column, at / Storage.ColumnBuffer.Capacity);
            for (var i = 0; i < chunk.Count; i++)
            {
                values[at++] = column.ToSi(chunk.AsLogged(i));
            }
        }

        return values;
    }

    private static List<LogProblem> Doubtful(List<TraceSample> samples, ProcessLog log)
    {
        List<LogProblem> problems = [];
        var steps = samples.Zip(samples.Skip(1), (a, b) => (b.Time - a.Time).TotalSeconds).ToList();
        var usual = steps.Order().ElementAt(steps.Count / 2);
        var longest = Math.Max(ShortestGapSeconds, usual * GapSteps);
        for (var i = 1; i < samples.Count && problems.Count < 5; i++)
        {
            var line = log.Header.Dialect.FirstDataLine + i;
            if (steps[i - 1] > longest)
            {
                problems.Add(Gap(samples[i - 1], steps[i - 1], usual, line));
            }
            else if (HasChangedUnit(samples, i))
            {
                problems.Add(UnitChange(samples, i, line));
            }
        }

        return problems;
    }

    private static LogProblem Gap(TraceSample before, double step, double usual, int line) =>
        new(
            LogProblemCode.Gap,
            FormattableString.Invariant(
                $"Line {line}: no sample for {step:0.#} s after {before.Time.TotalSeconds:0.#} s; the others are {usual:0.##} s apart. The logger stood still, or its clock was changed."
            ),
            "Log the test anew without a gap, or type the readings in."
        )
        {
            Line = line,
        };

    /// <summary>A step to a multiple that stays: the sample after it is of the new size too.</summary>
    private static bool HasChangedUnit(List<TraceSample> samples, int i)
    {
        var (before, now) = (samples[i - 1].Gauge.Pascals, samples[i].Gauge.Pascals);
        var after = samples[Math.Min(i + 1, samples.Count - 1)].Gauge.Pascals;
        return before > 1e5
            && now > 1e5
            && UnitRatios.Any(r =>
                Math.Abs((Math.Max(now, before) / Math.Min(now, before) / r) - 1) < NearRatio
            )
            && after / now is > 0.9 and < 1.1;
    }

    private static LogProblem UnitChange(List<TraceSample> samples, int i, int line) =>
        new(
            LogProblemCode.UnitChanged,
            FormattableString.Invariant(
                $"Line {line}: the pressure steps from {samples[i - 1].Gauge.Bar:0.###} to {samples[i].Gauge.Bar:0.###} bar at once and stays there; the unit of the logger seems to have changed."
            ),
            "Set the logger to one unit and log the test anew, or type the readings in."
        )
        {
            Line = line,
        };
}
