namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Path along the seam from machine coordinates: the sum of the chords between points at least 0.2 mm apart, so that the
/// noise of a standing axis adds nothing. Common practice, no published source.
/// </summary>
public sealed class CoordinatePath
{
    private const double ChordMetres = 0.2e-3;
    private double _x = double.NaN;
    private double _y;

    /// <summary>Path so far in m.</summary>
    public double TravelledMetres { get; private set; }

    /// <summary>Takes the next point and gives the path up to it, in m.</summary>
    /// <param name="xMetres">First coordinate, finite.</param>
    /// <param name="yMetres">Second coordinate, finite.</param>
    public double Add(double xMetres, double yMetres)
    {
        if (double.IsNaN(_x))
        {
            (_x, _y) = (xMetres, yMetres);
        }

        var chord = Math.Sqrt(
            ((xMetres - _x) * (xMetres - _x)) + ((yMetres - _y) * (yMetres - _y))
        );
        if (chord >= ChordMetres)
        {
            TravelledMetres += chord;
            (_x, _y) = (xMetres, yMetres);
        }

        return TravelledMetres;
    }

    /// <summary>Leaves out what happens until the next point.</summary>
    public void Interrupt() => _x = double.NaN;
}
