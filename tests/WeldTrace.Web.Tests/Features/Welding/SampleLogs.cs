using System.Text;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Features.Welding;

/// <summary>Logs of invented runs of the first pass: track radius 62 mm, overlap 15°, planned path 405.8 mm.</summary>
internal static class SampleLogs
{
    public static byte[] Good() => Bytes(Run);

    /// <summary>Axial force 1.5 kN low over 10 mm of seam from 90° on: 3 s, against a window of 7.2 to 8.8 kN.</summary>
    public static byte[] WithExcursion() =>
        Bytes(
            Run with
            {
                Excursion = new DemoExcursion(
                    Angle.FromDegrees(90),
                    Length.FromMillimetres(10),
                    Force.FromKilonewtons(-1.5)
                ),
            }
        );

    /// <summary>Stopped after half a turn.</summary>
    public static byte[] Stopped() => Bytes(Run with { AbortAt = Angle.FromDegrees(180) });

    /// <summary>A good log with one line replaced; lines count from 1, the header is line 1.</summary>
    public static byte[] WithLine(int line, Func<string, string> edit)
    {
        var lines = Text().Split('\n');
        lines[line - 1] = edit(lines[line - 1]);
        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }

    public static string Text() => Encoding.UTF8.GetString(Good());

    private static DemoRun Run { get; } =
        new()
        {
            TrackRadius = Length.FromMillimetres(62),
            Overlap = Length.FromMillimetres(62 * 15 * Math.PI / 180),
            SamplesPerSecond = 20,
        };

    private static byte[] Bytes(DemoRun run) => Encoding.UTF8.GetBytes(new DemoLog(run).ToCsv());
}
