using System.Numerics;
using System.Runtime.InteropServices;

namespace WeldTrace.ProcessLogs;

/// <summary>Turns last digits into SI, without a look at the unit's name for each of them.</summary>
/// <param name="DigitsPerUnit">Last digits in one unit as logged.</param>
/// <param name="Scale">SI units per unit as logged.</param>
/// <param name="OffsetSi">Added at last.</param>
internal readonly record struct SiConversion(double DigitsPerUnit, double Scale, double OffsetSi)
{
    /// <summary>Converts one number.</summary>
    public double Convert(double digits) => (digits / DigitsPerUnit * Scale) + OffsetSi;

    /// <summary>Converts many numbers by one factor, within their last bits: good enough for sums, and without a division each.</summary>
    public void ConvertNearly(ReadOnlySpan<double> digits, Span<double> si) =>
        new SiConversion(1, Scale / DigitsPerUnit, OffsetSi).Scaled(digits, si);

    private void Scaled(ReadOnlySpan<double> digits, Span<double> si)
    {
        var from = MemoryMarshal.Cast<double, Vector<double>>(digits);
        var to = MemoryMarshal.Cast<double, Vector<double>>(si[..digits.Length]);
        var offset = new Vector<double>(OffsetSi);
        for (var i = 0; i < from.Length; i++)
        {
            to[i] = (from[i] * Scale) + offset;
        }

        for (var i = from.Length * Vector<double>.Count; i < digits.Length; i++)
        {
            si[i] = (digits[i] * Scale) + OffsetSi;
        }
    }

    /// <summary>Converts many numbers, as many at once as the processor takes.</summary>
    public void Convert(ReadOnlySpan<double> digits, Span<double> si)
    {
        var from = MemoryMarshal.Cast<double, Vector<double>>(digits);
        var to = MemoryMarshal.Cast<double, Vector<double>>(si[..digits.Length]);
        for (var i = 0; i < from.Length; i++)
        {
            to[i] = (from[i] / DigitsPerUnit * Scale) + new Vector<double>(OffsetSi);
        }

        for (var i = from.Length * Vector<double>.Count; i < digits.Length; i++)
        {
            si[i] = (digits[i] / DigitsPerUnit * Scale) + OffsetSi;
        }
    }
}
