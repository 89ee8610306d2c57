using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs;

/// <summary>Decoded samples of one column, in the unit as logged; to be used again for the next chunk.</summary>
public sealed class SampleBlock
{
    private int[] _codes = [];
    private double[] _values = [];
    private int[] _negativeZeros = [];

    public int Count { get; private set; }

    /// <summary>Whether the samples are whole numbers of the last digit.</summary>
    public bool IsFixedDecimal { get; private set; }

    /// <summary>Decimals of the last digit; zero when the samples are not fixed decimals.</summary>
    public int Decimals { get; private set; }

    /// <summary>The samples times ten to the power of <see cref="Decimals"/>; empty when they are not fixed decimals.</summary>
    public ReadOnlySpan<int> Codes => _codes.AsSpan(0, IsFixedDecimal ? Count : 0);

    /// <summary>Places, ascending, where a zero was written with a minus sign.</summary>
    public ReadOnlySpan<int> NegativeZeros => _negativeZeros;

    internal bool HasNegativeZeros => _negativeZeros.Length > 0;

    /// <summary>The samples when they are not fixed decimals; else empty.</summary>
    public ReadOnlySpan<double> FloatValues => _values.AsSpan(0, IsFixedDecimal ? 0 : Count);

    /// <summary>Writes every sample, correctly rounded.</summary>
    /// <param name="values">Room for <see cref="Count"/> samples.</param>
    public void CopyValuesTo(Span<double> values)
    {
        if (!IsFixedDecimal)
        {
            FloatValues.CopyTo(values);
            return;
        }

        var codes = Codes;
        var scale = PowersOfTen.AsDouble(Decimals);
        values = values[..codes.Length];
        for (var i = 0; i < codes.Length; i++)
        {
            values[i] = codes[i] / scale;
        }
    }

    internal Span<int> ResetCodes(int count, int decimals)
    {
        _codes = _codes.Length < count ? new int[count] : _codes;
        (Count, Decimals, IsFixedDecimal) = (count, decimals, true);
        return _codes.AsSpan(0, count);
    }

    internal void SetNegativeZeros(ReadOnlySpan<int> places) =>
        _negativeZeros = places.IsEmpty ? [] : places.ToArray();

    internal Span<double> ResetFloats(int count)
    {
        _values = _values.Length < count ? new double[count] : _values;
        (Count, Decimals, IsFixedDecimal) = (count, 0, false);
        _negativeZeros = [];
        return _values.AsSpan(0, count);
    }
}
