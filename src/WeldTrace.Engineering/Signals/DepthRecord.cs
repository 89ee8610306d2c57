namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Finds the first sample within a tolerance of the deepest one without a second reading: such a sample is
/// always a new depth record. Records less than 1/256 of the tolerance apart are not kept apart.
/// </summary>
internal sealed class DepthRecord(double toleranceMetres)
{
    private const int Capacity = 512;
    private const double Steps = 256;

    private readonly (double Depth, LogPoint Point)[] _records = new (double, LogPoint)[Capacity];
    private int _head;
    private int _count;

    public double DeepestMetres { get; private set; } = double.NaN;

    public LogPoint? FirstAtDepth => _count == 0 ? null : _records[_head].Point;

    public void Clear()
    {
        (_head, _count) = (0, 0);
        DeepestMetres = double.NaN;
    }

    public void Add(double depthMetres, LogPoint point)
    {
        if (double.IsNaN(depthMetres) || depthMetres <= DeepestMetres)
        {
            return;
        }

        DeepestMetres = depthMetres;
        while (_count > 0 && _records[_head].Depth < depthMetres - toleranceMetres)
        {
            _head = (_head + 1) % Capacity;
            _count--;
        }

        if (_count == 0 || depthMetres > Newest + (toleranceMetres / Steps))
        {
            _records[(_head + _count) % Capacity] = (depthMetres, point);
            _count++;
        }
    }

    private double Newest => _records[(_head + _count - 1) % Capacity].Depth;
}
