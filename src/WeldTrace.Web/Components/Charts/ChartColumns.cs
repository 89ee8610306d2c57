using System.Buffers.Binary;

namespace WeldTrace.Web.Components.Charts;

/// <summary>
/// The bytes that a chart reads, little-endian: count of value columns and count of rows (32-bit unsigned), the horizontal
/// column as 64-bit floats, then each value column as 32-bit floats. NaN is a gap.
/// </summary>
public static class ChartColumns
{
    /// <summary>Media type of the answer.</summary>
    public const string ContentType = "application/octet-stream";

    /// <summary>Writes the columns; all have as many rows as the horizontal one.</summary>
    /// <exception cref="ArgumentException">A column has another count of rows.</exception>
    public static byte[] Write(
        IReadOnlyList<double> horizontal,
        params IReadOnlyList<IReadOnlyList<double>> columns
    )
    {
        if (columns.Any(column => column.Count != horizontal.Count))
        {
            throw new ArgumentException("Every column needs as many rows as the horizontal one.");
        }

        var bytes = new byte[8 + (horizontal.Count * (8 + (4 * columns.Count)))];
        BinaryPrimitives.WriteUInt32LittleEndian(bytes, (uint)columns.Count);
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(4), (uint)horizontal.Count);
        var at = 8;
        foreach (var value in horizontal)
        {
            BinaryPrimitives.WriteDoubleLittleEndian(bytes.AsSpan(at), value);
            at += 8;
        }

        foreach (var value in columns.SelectMany(column => column))
        {
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(at), (float)value);
            at += 4;
        }

        return bytes;
    }
}
