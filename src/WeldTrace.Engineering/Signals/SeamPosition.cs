using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Signals;

/// <summary>Where the position along the seam is taken from.</summary>
public enum SeamPositionSource
{
    /// <summary>The logged travel speed, integrated by the trapezoid rule.</summary>
    TravelSpeed,

    /// <summary>The logged angle of the rotary axis times the radius of the track.</summary>
    AxisAngle,

    /// <summary>The programmed speed times the time since the start.</summary>
    ProgrammedSpeed,

    /// <summary>The path of two logged machine coordinates.</summary>
    Coordinates,
}

/// <summary>
/// Distance travelled along the seam, sample by sample, zero at the first sample: s = integral of v dt,
/// s = R |sum of angle steps|, or s = v (t - t0).
/// </summary>
public sealed class SeamPosition
{
    private readonly SeamPositionSource _source;
    private readonly double _constant;
    private TrapezoidIntegral _integral;
    private double _previous = double.NaN;
    private double _turned;

    private SeamPosition(SeamPositionSource source, double constant) =>
        (_source, _constant) = (source, constant);

    /// <summary>Distance travelled up to the last sample; zero or more for travel in one direction.</summary>
    public Length Travelled { get; private set; }

    /// <summary>Position from samples of the travel speed in m/s.</summary>
    public static SeamPosition FromTravelSpeed() => new(SeamPositionSource.TravelSpeed, 0);

    /// <summary>Position from samples of the axis angle in rad; a jump by a whole turn counts as none.</summary>
    /// <param name="trackRadius">Radius of the pass; more than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The radius is not more than zero.</exception>
    public static SeamPosition FromAxisAngle(Length trackRadius) =>
        trackRadius > Length.Zero
            ? new(SeamPositionSource.AxisAngle, trackRadius.Metres)
            : throw new ArgumentOutOfRangeException(
                nameof(trackRadius),
                trackRadius,
                "Not more than zero."
            );

    /// <summary>Position from the time alone.</summary>
    /// <param name="speed">Programmed travel speed; zero or more.</param>
    public static SeamPosition FromProgrammedSpeed(Speed speed) =>
        new(SeamPositionSource.ProgrammedSpeed, speed.MetresPerSecond);

    /// <summary>Takes the next sample and gives the position at it, in m.</summary>
    /// <param name="timeSeconds">Time stamp in s, not before the one before.</param>
    /// <param name="siSample">Travel speed in m/s or axis angle in rad; not used with the programmed speed.</param>
    public double Add(double timeSeconds, double siSample)
    {
        var metres = Next(timeSeconds, siSample);
        Travelled = Length.FromMetres(metres);
        return metres;
    }

    /// <summary>Takes a batch of samples and gives the position at each, in m.</summary>
    /// <param name="timesSeconds">Time stamps in s, none before the one before.</param>
    /// <param name="siSamples">As many travel speeds in m/s or axis angles in rad; not used with the programmed speed.</param>
    /// <param name="metres">Room for as many.</param>
    public void Add(
        ReadOnlySpan<double> timesSeconds,
        ReadOnlySpan<double> siSamples,
        Span<double> metres
    )
    {
        if (_source == SeamPositionSource.TravelSpeed)
        {
            _integral.Add(timesSeconds, siSamples, metres);
        }
        else
        {
            for (var i = 0; i < timesSeconds.Length; i++)
            {
                metres[i] = Next(timesSeconds[i], siSamples[i]);
            }
        }

        Travelled = timesSeconds.IsEmpty
            ? Travelled
            : Length.FromMetres(metres[timesSeconds.Length - 1]);
    }

    /// <summary>Leaves out what happens until the next sample, for instance between two stays in the work.</summary>
    public void Interrupt()
    {
        _integral.Interrupt();
        _previous = double.NaN;
    }

    private double Next(double timeSeconds, double siSample) =>
        _source switch
        {
            SeamPositionSource.TravelSpeed => _integral.Add(timeSeconds, siSample),
            SeamPositionSource.AxisAngle => _constant * Math.Abs(Turn(siSample)),
            _ => _integral.Add(timeSeconds, _constant),
        };

    private double Turn(double angleRadians)
    {
        if (!double.IsNaN(_previous))
        {
            _turned += Math.IEEERemainder(angleRadians - _previous, 2 * Math.PI);
        }

        _previous = angleRadians;
        return _turned;
    }
}
