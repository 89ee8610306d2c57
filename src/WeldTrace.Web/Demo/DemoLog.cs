using System.Globalization;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Demo;

/// <summary>Writes the log of an invented run as a machine would: 12 columns of CSV, noise from a fixed seed.</summary>
internal sealed class DemoLog(DemoRun run)
{
    public const string Header =
        "t [s],spindle [rpm],feed [mm/min],Fz [kN],Fx [kN],torque [Nm],z [mm],tool temp [°C],axis angle [deg],x [mm],y [mm],spindle power [kW]";

    private readonly DemoMotion _motion = new(run);
    private readonly Random _noise = new(run.Seed);
    private double _temperature = 24;

    public int SampleCount => (int)(_motion.End * run.SamplesPerSecond);

    public string ToCsv()
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        WriteTo(text);
        return text.ToString();
    }

    public void WriteTo(TextWriter text)
    {
        text.Write(Header + "\n");
        for (var i = 0; i < SampleCount; i++)
        {
            Write(text, (double)i / run.SamplesPerSecond);
        }
    }

    private void Write(TextWriter text, double time)
    {
        var isInWork = time >= DemoMotion.Contact && time < _motion.ToolFree;
        var speed = _motion.Speed(time);
        var travelled = _motion.Travelled(time);
        var spindle = time < 0.5 ? 0 : run.SpindleSpeed.RevolutionsPerMinute + Noise(1.5);
        var force = isInWork ? Force(time, travelled) + Noise(0.06) : Noise(0.01);
        var torque = isInWork ? Torque(time, speed) + Noise(0.15) : Math.Abs(Noise(0.1));
        var side = isInWork && speed > 0 ? 0.9 + Noise(0.05) : Noise(0.01);
        var angle = Heading(travelled);
        _temperature += ((isInWork ? 410 : 24) - _temperature) / (20.0 * run.SamplesPerSecond);
        var radius = run.TrackRadius.Millimetres;
        text.Write(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{time:F4},{spindle:F1},{speed * 60:F1},{force:F3},{side:F3},{torque:F2},"
            )
        );
        text.Write(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{_motion.Height(time) + Noise(0.001):F4},{_temperature + Noise(0.4):F1},{angle.Degrees:F3},"
            )
        );
        text.Write(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{radius * Math.Cos(angle.Radians):F3},{radius * Math.Sin(angle.Radians):F3},{torque * spindle * Math.PI / 30e3:F3}\n"
            )
        );
    }

    private double Force(double time, double travelled)
    {
        var steady = run.AxialForce.Kilonewtons;
        var plunging = DemoMotion.TravelStart - 3;
        var force =
            time < plunging
                ? steady
                    * 1.15
                    * (
                        0.15
                        + (0.85 * (time - DemoMotion.Contact) / (plunging - DemoMotion.Contact))
                    )
            : time < DemoMotion.TravelStart ? steady * 1.05
            : time < _motion.RetractStart ? steady
            : steady * (_motion.ToolFree - time) / (_motion.ToolFree - _motion.RetractStart);
        return force + Disturbance(travelled);
    }

    private double Disturbance(double travelled)
    {
        if (run.Excursion is not { } excursion)
        {
            return 0;
        }

        var from = run.TrackRadius.Millimetres * excursion.At.Radians;
        return travelled >= from && travelled < from + excursion.Length.Millimetres
            ? excursion.Change.Kilonewtons
            : 0;
    }

    private double Torque(double time, double speed)
    {
        var share =
            speed > 0 ? 1
            : time < DemoMotion.TravelStart ? 0.8
            : 0.9;
        return run.Torque.NewtonMetres * share;
    }

    private Angle Heading(double travelled)
    {
        var sense = run.Travel == RotationSense.CounterClockwise ? 1 : -1;
        return Angle.FromRadians(
            run.Start.Radians + (sense * travelled / run.TrackRadius.Millimetres)
        );
    }

    /// <summary>Nearly normal: the sum of four uniform numbers.</summary>
    private double Noise(double deviation)
    {
        var sum =
            _noise.NextDouble()
            + _noise.NextDouble()
            + _noise.NextDouble()
            + _noise.NextDouble()
            - 2;
        return deviation * sum * Math.Sqrt(3);
    }
}
