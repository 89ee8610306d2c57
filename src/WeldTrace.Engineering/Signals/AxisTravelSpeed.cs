using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Travel speed from the angle of a rotary axis: radius times the angle turned over the last 0.2 s (or the last
/// 4,096 samples, if those are fewer), divided by that time. Lags by half of it.
/// </summary>
/// <param name="trackRadius">Radius of the pass; more than zero.</param>
public sealed class AxisTravelSpeed(Length trackRadius)
{
    private const int Capacity = 4096;
    private const double SpanSeconds = 0.2;

    private readonly (double Seconds, double Turned)[] _window = new (double, double)[Capacity];
    private readonly double _radius = trackRadius.Metres;
    private int _head;
    private int _count;
    private double _angle = double.NaN;
    private double _turned;

    /// <summary>Takes the next sample and gives the speed in m/s, zero or more; zero at the first sample.</summary>
    /// <param name="timeSeconds">Time stamp in s, after the one before.</param>
    /// <param name="angleRadians">Angle of the axis in rad; a jump by a whole turn counts as none.</param>
    public double Add(double timeSeconds, double angleRadians)
    {
        _turned += double.IsNaN(_angle)
            ? 0
            : Math.IEEERemainder(angleRadians - _angle, 2 * Math.PI);
        _angle = angleRadians;
        while (
            _count == Capacity
            || (_count > 1 && _window[(_head + 1) % Capacity].Seconds <= timeSeconds - SpanSeconds)
        )
        {
            _head = (_head + 1) % Capacity;
            _count--;
        }

        _window[(_head + _count++) % Capacity] = (timeSeconds, _turned);
        var (seconds, turned) = _window[_head];
        return timeSeconds > seconds
            ? _radius * Math.Abs(_turned - turned) / (timeSeconds - seconds)
            : 0;
    }
}
