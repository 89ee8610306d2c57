using WeldTrace.Documents.Drawings;

namespace WeldTrace.Documents.Tests.Samples;

/// <summary>A constructed log of 160 s at 10 Hz; the noise repeats from its seed.</summary>
internal static class SampleLog
{
    public static ProcessLogPlot Plot(int seed)
    {
        var noise = new Random(seed);
        var times = Enumerable.Range(0, 1600).Select(i => i / 10.0).ToArray();
        var force = times
            .Select(t => Force(t, seed) + (0.08 * (noise.NextDouble() - 0.5)))
            .ToArray();
        var speed = times.Select(t =>
            Travel(t) + (t is > 32 and < 150 ? noise.NextDouble() - 0.5 : 0)
        );
        var torque = times.Select(t =>
            18 + (4 * Force(t, seed) / 7.5) + (0.5 * noise.NextDouble())
        );
        return new ProcessLogPlot
        {
            TimesInSeconds = times,
            Phases =
            [
                Phase("plunge", 0, 27.6),
                Phase("dwell", 27.6, 31.6),
                Phase("traverse", 31.6, 150.9),
                Phase("exit", 150.9, 160),
            ],
            Channels =
            [
                new LogChannel("Axial force", "kN", force)
                {
                    Window = new ChannelWindow(6.8, 7.5, 8.2),
                    Excursions =
                        seed == 2
                            ? []
                            :
                            [
                                new LogExcursion(
                                    "1",
                                    TimeSpan.FromSeconds(62),
                                    TimeSpan.FromSeconds(67.4)
                                ),
                            ],
                },
                new LogChannel("Travel speed", "mm/min", [.. speed])
                {
                    Window = new ChannelWindow(190, 200, 210),
                },
                new LogChannel("Spindle torque", "N·m", [.. torque]),
            ],
        };
    }

    private static double Force(double t, int seed) =>
        t switch
        {
            < 4 => 0,
            < 27.6 => 9.4 * (t - 4) / 23.6,
            < 31.6 => 8.2,
            < 62 => 7.5 + (0.1 * Math.Sin(t)),
            < 67.4 => seed == 2 ? 7.6 : 8.2 + (0.44 * Math.Sin((t - 62) / 5.4 * Math.PI)),
            < 150.9 => 7.5 + (0.15 * Math.Sin(t * 0.7)),
            < 154 => 7.5 * (154 - t) / 3.1,
            _ => 0,
        };

    private static double Travel(double t) =>
        t switch
        {
            < 31.6 => 0,
            < 33 => 200 * (t - 31.6) / 1.4,
            < 150 => 200,
            < 150.9 => 200 * (150.9 - t) / 0.9,
            _ => 0,
        };

    private static LogPhase Phase(string name, double from, double to) =>
        new(name, TimeSpan.FromSeconds(from), TimeSpan.FromSeconds(to));
}
