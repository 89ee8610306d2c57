using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
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
        ref var code = ref MemoryMarshal.GetReference(codes);
        ref var value = ref MemoryMarshal.GetReference(values);
        var i = 0;
        for (; Avx.IsSupported && i <= codes.Length - 4; i += 4)
        {
            var four = Avx.ConvertToVector256Double(Vector128.LoadUnsafe(ref code, (nuint)i));
            (four / scale).StoreUnsafe(ref value, (nuint)i);
        }

        for (; i < codes.Length; i++)
        {
            values[i] = codes[i] / scale;
        }
    }

    /// <summary>Writes every sample as a whole number of digits with so many decimals; samples that are no fixed decimals as they are.</summary>
    /// <param name="digits">Room for <see cref="Count"/> samples.</param>
    /// <param name="decimals">Not fewer than <see cref="Decimals"/>.</param>
    internal void CopyDigitsTo(Span<double> digits, int decimals)
    {
        if (!IsFixedDecimal)
        {
            FloatValues.CopyTo(digits);
            return;
        }

        var codes = Codes;
        ref var code = ref MemoryMarshal.GetReference(codes);
        ref var digit = ref MemoryMarshal.GetReference(digits[..codes.Length]);
        var scale = PowersOfTen.AsDouble(decimals - Decimals);
        var i = 0;
        // Not every processor turns 64-bit whole numbers into fractions; those of 32 bits all do.
        for (; Avx.IsSupported && i <= codes.Length - 4; i += 4)
        {
            var four = Avx.ConvertToVector256Double(Vector128.LoadUnsafe(ref code, (nuint)i));
            (four * scale).StoreUnsafe(ref digit, (nuint)i);
        }

        for (; !Avx.IsSupported && i <= codes.Length - Vector<int>.Count; i += Vector<int>.Count)
        {
            Vector.Widen(Vector.LoadUnsafe(ref code, (nuint)i), out var low, out var high);
            (Vector.ConvertToDouble(low) * scale).StoreUnsafe(ref digit, (nuint)i);
            (Vector.ConvertToDouble(high) * scale).StoreUnsafe(
                ref digit,
                (nuint)(i + Vector<double>.Count)
            );
        }

        for (; i < codes.Length; i++)
        {
            digits[i] = codes[i] * scale;
        }
    }

    /// <summary>One sample, in the unit as logged.</summary>
    internal double AsLogged(int index) =>
        IsFixedDecimal ? _codes[index] / PowersOfTen.AsDouble(Decimals) : _values[index];

    /// <summary>Smallest and largest of one or more samples in a row, in the unit as logged.</summary>
    internal (double Minimum, double Maximum) ExtremesOf(int from, int count)
    {
        if (!IsFixedDecimal)
        {
            return Extremes.Of(_values.AsSpan(from, count));
        }

        var (minimum, maximum) = Extremes.Of(_codes.AsSpan(from, count));
        var scale = PowersOfTen.AsDouble(Decimals);
        return (minimum / scale, maximum / scale);
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
