using System.Runtime.InteropServices;

namespace WeldTrace.ProcessLogs.Storage;

/// <summary>
/// Cuts the rows of a log into chunks. A full chunk is compressed and checked on a second thread while the next one is
/// read; never more than one is under way.
/// </summary>
internal sealed class ChunkWriter : IDisposable
{
    private readonly ChannelCodec _codec = new();
    private readonly ColumnBuffer[] _columns;
    private readonly ColumnSlice[] _slices;
    private readonly PyramidBuilder[] _pyramids;
    private readonly RenderCheck _check;
    private readonly List<EncodedChunk> _chunks = [];
    private readonly SemaphoreSlim _free = new(1);
    private Exception? _failure;
    private int _index;

    public ChunkWriter(int columns, RenderCheck check)
    {
        _check = check;
        _columns = [.. Enumerable.Range(0, columns).Select(_ => new ColumnBuffer())];
        _slices = [.. Enumerable.Range(0, columns).Select(_ => new ColumnSlice())];
        _pyramids =
        [
            .. Enumerable.Range(0, columns).Select(ordinal => new PyramidBuilder(ordinal)),
        ];
    }

    public ReadOnlySpan<ColumnBuffer> Columns => _columns;

    /// <summary>Rows of the chunk being filled; the next sample belongs to the row of this number.</summary>
    public int Row { get; private set; }

    /// <summary>Rows of the log so far.</summary>
    public long RowCount { get; private set; }

    /// <summary>The chunks, once complete.</summary>
    public IReadOnlyList<EncodedChunk> Chunks => _chunks;

    public void EndRow()
    {
        RowCount++;
        if (++Row == ColumnBuffer.Capacity)
        {
            Flush();
        }
    }

    public IReadOnlyList<PyramidLevel> Complete()
    {
        if (Row > 0)
        {
            Flush();
        }

        WaitForSlices();
        _free.Release();
        return
        [
            .. _pyramids.SelectMany(
                (pyramid, i) =>
                    pyramid.Complete(
                        _codec,
                        _columns[i].IsFixedDecimal ? _columns[i].Decimals : null
                    )
            ),
        ];
    }

    /// <summary>SHA-256 of the log rendered again, once complete; none when it has to be rendered as a whole.</summary>
    public string? RenderedSha256(bool endsWithNewLine) =>
        _check.Complete(endsWithNewLine, [.. _columns.Select(column => column.Style)]);

    public void Dispose()
    {
        _free.Wait();
        _free.Dispose();
        _codec.Dispose();
    }

    private void Flush()
    {
        WaitForSlices();
        for (var ordinal = 0; ordinal < _columns.Length; ordinal++)
        {
            _columns[ordinal].GiveTo(_slices[ordinal], Row);
        }

        Row = 0;
        _ = Task.Run(KeepSlices);
    }

    private void WaitForSlices()
    {
        _free.Wait();
        if (_failure is not null)
        {
            _free.Release();
            throw new InvalidDataException("The samples could not be compressed.", _failure);
        }
    }

    private void KeepSlices()
    {
        try
        {
            for (var ordinal = 0; ordinal < _slices.Length; ordinal++)
            {
                _chunks.Add(Encode(ordinal, _slices[ordinal]));
            }

            _check.Add(CollectionsMarshal.AsSpan(_chunks)[^_slices.Length..], _slices);
            _index++;
        }
        catch (Exception failure)
        {
            // Told to the reader at its next chunk.
            _failure = failure;
        }
        finally
        {
            _free.Release();
        }
    }

    private EncodedChunk Encode(int ordinal, ColumnSlice slice)
    {
        var (minimum, maximum, sum) = _pyramids[ordinal].Add(slice);
        var bytes = slice.IsFloat
            ? _codec.Encode(slice.Values.AsSpan(0, slice.Count))
            : _codec.Encode(
                slice.Codes.AsSpan(0, slice.Count),
                slice.Decimals,
                CollectionsMarshal.AsSpan(slice.NegativeZeros)
            );
        var codec = slice.IsFloat ? ChunkCodec.Float64Zstd : ChunkCodec.Int32Zstd;
        return new(ordinal, _index, slice.Count, minimum, maximum, sum, codec, bytes);
    }
}
