using System.Text;
using WeldTrace.ProcessLogs;

namespace WeldTrace.TestSupport.Logs;

/// <summary>
/// The log that speed and memory are measured on: 12 channels at 2 kHz, at full length 20 minutes, 2,400,000 rows and about
/// 204 MB. Idle, plunge, dwell, traverse and retract; sensor noise, slow drift and run-out at the spindle's frequency; six
/// excursions of the force; force and torque quantised as by a 16-bit converter whose step is no round decimal, then
/// printed with 1 to 4 decimals; temperatures refreshed at 20 Hz. The same seed gives the same bytes.
/// </summary>
public sealed class ReferenceLog(int rows = ReferenceLog.FullRows, ulong seed = 20_260_301)
{
    public const int FullRows = 2_400_000;
    private const double SamplesPerSecond = 2000;
    private const double PlungeAt = 0.01;
    private const double DwellAt = 0.03;
    private const double TraverseAt = 0.035;
    private const double RetractAt = 0.985;
    private const double FreeAt = 0.995;
    private const double SpindleHertz = 800 / 60.0;
    private const double TravelMillimetresPerSecond = 200 / 60.0;
    private const int RefreshedEach = 100;
    private const int Excursions = 6;
    private const int LongestRow = 160;
    private const int Buffer = 1 << 20;

    private ulong _state = seed;

    /// <summary>What its columns mean.</summary>
    public static LogMapping Mapping { get; } =
        new([
            new("t [s]", LogChannel.Time, "s"),
            new("Fz [kN]", LogChannel.AxialForce, "kN"),
            new("Fx [kN]", LogChannel.TraverseForce, "kN"),
            new("Fy [kN]", LogChannel.Other, "kN"),
            new("torque [N.m]", LogChannel.Torque, "N·m"),
            new("spindle [rpm]", LogChannel.SpindleSpeed, "rpm"),
            new("feed [mm/min]", LogChannel.TravelSpeed, "mm/min"),
            new("z [mm]", LogChannel.PlungeDepth, "mm", -1),
            new("x [mm]", LogChannel.X, "mm"),
            new("c [deg]", LogChannel.AxisAngle, "°"),
            new("tool temp [degC]", LogChannel.ToolTemperature, "°C"),
            new("plate temp [degC]", LogChannel.Other, "°C"),
        ]);

    /// <summary>Writes the file.</summary>
    public void WriteCsv(Stream destination)
    {
        ArgumentNullException.ThrowIfNull(destination);
        var buffer = new byte[Buffer];
        var length = Encoding.UTF8.GetBytes(
            string.Join(',', Mapping.Columns.Select(c => c.Column)) + "\n",
            buffer
        );
        var (tool, plate) = (25.0, 22.0);
        for (var row = 0; row < rows; row++)
        {
            if (row % RefreshedEach == 0)
            {
                (tool, plate) = Temperatures((double)row / rows);
            }

            length += Row(row, tool, plate, buffer.AsSpan(length));
            if (length > Buffer - LongestRow)
            {
                destination.Write(buffer, 0, length);
                length = 0;
            }
        }

        destination.Write(buffer, 0, length);
    }

    private int Row(int row, double tool, double plate, Span<byte> text)
    {
        var (seconds, share) = (row / SamplesPerSecond, (double)row / rows);
        var isDown = share is > PlungeAt and < FreeAt;
        var isTravelling = share is > TraverseAt and < RetractAt;
        var plunge = Math.Clamp((share - PlungeAt) / (DwellAt - PlungeAt), 0, 1);
        var load = isDown ? plunge : 0;
        var runOut = Math.Sin(2 * Math.PI * SpindleHertz * seconds);
        var drift = Math.Sin(2 * Math.PI * seconds / 400);
        var force = load * (9.5 + (0.15 * drift) + (0.12 * runOut)) + Excursion(share);
        var torque = load * (38 + (0.8 * drift) + (0.9 * runOut));
        var travelled = isTravelling ? (share - TraverseAt) * rows / SamplesPerSecond : 0;
        var millimetres = travelled * TravelMillimetresPerSecond;
        var at = 0;
        at += Number(seconds, 4, text[at..]);
        at += Number(Converted(force + Noise(0.02), 0.000_763), 4, text[at..]);
        at += Number(
            Converted((load * 1.4) + (0.08 * runOut) + Noise(0.015), 0.000_763),
            4,
            text[at..]
        );
        at += Number(
            Converted((load * 0.6) + (0.05 * runOut) + Noise(0.012), 0.000_763),
            4,
            text[at..]
        );
        at += Number(Converted(torque + Noise(0.12), 0.003_052), 3, text[at..]);
        at += Number(isDown ? 800 + Noise(0.6) : 0, 1, text[at..]);
        at += Number(isTravelling ? 200 + Noise(0.25) : 0, 1, text[at..]);
        at += Number(isDown ? (-4.6 * plunge) + Noise(0.0006) : 5, 4, text[at..]);
        at += Number(millimetres, 3, text[at..]);
        at += Number(millimetres / 250 * (180 / Math.PI), 3, text[at..]);
        at += Number(tool, 1, text[at..]);
        at += Number(plate, 1, text[at..]);
        text[at - 1] = (byte)'\n';
        return at;
    }

    private static double Excursion(double share)
    {
        for (var i = 1; i <= Excursions; i++)
        {
            var from = TraverseAt + (i * 0.13);
            if (share > from && share < from + 0.0012)
            {
                return i % 2 == 0 ? 1.4 : -1.4;
            }
        }

        return 0;
    }

    private (double Tool, double Plate) Temperatures(double share) =>
        (
            25 + (420 * Math.Min(1, Math.Max(0, share - PlungeAt) * 20)) + Noise(0.2),
            22 + (90 * share) + Noise(0.1)
        );

    private static double Converted(double value, double step) => Math.Round(value / step) * step;

    // The sum of four even spreads is near enough to a bell.
    private double Noise(double standardDeviation)
    {
        var sum = 0L;
        for (var i = 0; i < 2; i++)
        {
            _state ^= _state << 13;
            _state ^= _state >> 7;
            _state ^= _state << 17;
            sum += (int)_state;
            sum += (int)(_state >> 32);
        }

        return sum / (double)int.MaxValue * standardDeviation * 0.866;
    }

    private static int Number(double value, int decimals, Span<byte> text)
    {
        value.TryFormat(
            text,
            out var length,
            decimals switch
            {
                1 => "F1",
                3 => "F3",
                _ => "F4",
            },
            System.Globalization.CultureInfo.InvariantCulture
        );
        text[length] = (byte)',';
        return length + 1;
    }
}
