using System.Buffers.Binary;
using System.Text;

namespace WeldTrace.TestSupport.Filling;

/// <summary>A column of a copied table.</summary>
/// <param name="Name">Name.</param>
/// <param name="Type">Name of its type in PostgreSQL.</param>
/// <param name="IsUnique">Whether no two rows may have the same.</param>
internal sealed record CopiedColumn(string Name, string Type, bool IsUnique);

/// <summary>A row as it goes over the wire, with the places at which its copies differ.</summary>
internal sealed class CopiedRow
{
    private const int IdLength = 16;
    private const int NumbersOfOne = 1000;
    private const string Digits = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    private readonly byte[] _bytes;
    private readonly List<Place> _places = [];
    private readonly (int Row, int Of) _among;

    /// <param name="bytes">The row in PostgreSQL's binary format: its number of fields, and each field with its length.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="ids">Records that are copied: number of the record that a copy has.</param>
    /// <param name="filling">What is filled.</param>
    /// <param name="among">Which row of how many of its table that are copied together.</param>
    public CopiedRow(
        byte[] bytes,
        IReadOnlyList<CopiedColumn> columns,
        IReadOnlyDictionary<Guid, Func<long, long>> ids,
        Filling filling,
        (int Row, int Of) among
    )
    {
        (_bytes, _among) = (bytes, among);
        foreach (var (id, which) in ids)
        {
            Add(id.ToByteArray(bigEndian: true), (n, to) => WriteId(id, which(n), to));
            Add(
                Encoding.ASCII.GetBytes(id.ToString()),
                (n, to) =>
                {
                    var raw = new byte[IdLength];
                    WriteId(id, which(n), raw);
                    new Guid(raw, bigEndian: true).TryFormat(to, out _);
                }
            );
        }

        Add(
            Encoding.ASCII.GetBytes(filling.Serial),
            (n, to) => Encoding.ASCII.GetBytes(filling.SerialOf(n), to)
        );
        AddFields(columns, filling);
        _places.Sort((a, b) => a.At.CompareTo(b.At));
    }

    /// <summary>Writes the copy of a number.</summary>
    public void Write(long copy, Stream to)
    {
        foreach (var place in _places)
        {
            place.Write(copy, _bytes.AsSpan(place.At, place.Length));
        }

        to.Write(_bytes);
    }

    // The leading bytes hold the time; the copies of one record then lie side by side in its index, as records of one day do.
    private static void WriteId(Guid id, long copy, Span<byte> to)
    {
        id.TryWriteBytes(to, bigEndian: true, out _);
        var tail = to[^sizeof(long)..];
        BinaryPrimitives.WriteInt64BigEndian(
            tail,
            BinaryPrimitives.ReadInt64BigEndian(id.ToByteArray(bigEndian: true).AsSpan()[^8..])
                ^ (copy + 1)
        );
    }

    private void Add(byte[] wanted, Writing write)
    {
        for (var from = 0; ; from++)
        {
            var found = _bytes.AsSpan(from).IndexOf(wanted);
            if (found < 0)
            {
                return;
            }

            from += found;
            _places.Add(new Place(from, wanted.Length, write));
        }
    }

    private void AddFields(IReadOnlyList<CopiedColumn> columns, Filling filling)
    {
        var at = sizeof(short);
        foreach (var column in columns)
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(_bytes.AsSpan(at));
            at += sizeof(int);
            if (length < 0)
            {
                continue;
            }

            AddField(column, at, length, filling);
            at += length;
        }
    }

    private void AddField(CopiedColumn column, int at, int length, Filling filling)
    {
        switch (column)
        {
            case { Type: "timestamp with time zone" }:
                var time = BinaryPrimitives.ReadInt64BigEndian(_bytes.AsSpan(at));
                var step = filling.Span.TotalMicroseconds / filling.Count;
                Put((n, to) => WriteTime(time - (long)(step * (filling.Count - n)), to));
                break;
            case { Type: "integer", IsUnique: true }:
                var number = BinaryPrimitives.ReadInt32BigEndian(_bytes.AsSpan(at));
                Put((n, to) => WriteNumber(number, n, to));
                break;
            case { IsUnique: true } when !_places.Exists(p => p.At >= at && p.At < at + length):
                Put((n, to) => WriteText((n * _among.Of) + _among.Row, to));
                break;
        }

        void Put(Writing write) => _places.Add(new Place(at, length, write));
    }

    private static void WriteTime(long microseconds, Span<byte> to) =>
        BinaryPrimitives.WriteInt64BigEndian(to, microseconds);

    // Numbers of the vessel's own records are small; those of its copies begin far above them.
    private static void WriteNumber(int number, long copy, Span<byte> to) =>
        BinaryPrimitives.WriteInt32BigEndian(
            to,
            checked((int)(((copy + 1) * NumbersOfOne) + number))
        );

    private static void WriteText(long number, Span<byte> to)
    {
        for (var i = to.Length - 1; i >= 0; i--, number /= Digits.Length)
        {
            to[i] = (byte)Digits[(int)(number % Digits.Length)];
        }

        if (number > 0)
        {
            throw new InvalidOperationException("A unique text is too short for so many copies.");
        }
    }

    private delegate void Writing(long copy, Span<byte> to);

    private sealed record Place(int At, int Length, Writing Write);
}
