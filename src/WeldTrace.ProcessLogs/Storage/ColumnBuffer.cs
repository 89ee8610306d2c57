namespace WeldTrace.ProcessLogs.Storage;

/// <summary>
/// Collects the samples of one column for one chunk: as whole numbers of the last digit while they fit in
/// 32 bits, else as floating point. The number of decimals only grows.
/// </summary>
internal sealed class ColumnBuffer
{
    public const int Capacity = 16_384;

    private int[] _codes = new int[Capacity];
    private List<int> _negativeZeros = [];
    private double[] _values = [];

    /// <summary>Decimals of the last digit of the codes.</summary>
    public int Decimals { get; private set; }

    /// <summary>Whether the samples of this chunk are kept as floating point.</summary>
    public bool IsFloat { get; private set; }

    /// <summary>Whether all chunks so far were whole numbers of the last digit.</summary>
    public bool IsFixedDecimal { get; private set; } = true;

    /// <summary>Whether every number so far was written with the same number of decimals.</summary>
    public bool IsUniform { get; private set; } = true;

    /// <summary>Decimals of the first number.</summary>
    public int WrittenDecimals { get; private set; }

    /// <summary>How the column is rendered, as far as it is known.</summary>
    public ColumnStyle Style => new(IsUniform ? WrittenDecimals : Decimals, IsUniform);

    private bool IsStarted { get; set; }

    public double ValueAt(int row) =>
        IsFloat ? _values[row] : _codes[row] / PowersOfTen.AsDouble(Decimals);

    /// <summary>Sets a sample; mantissa and decimals have at most 15 digits.</summary>
    public void Set(int row, bool isNegative, long mantissa, int decimals)
    {
        if (isNegative && mantissa == 0)
        {
            NoteNegativeZero(row);
        }

        if (decimals == Decimals && mantissa <= int.MaxValue && !IsFloat)
        {
            _codes[row] = isNegative ? -(int)mantissa : (int)mantissa;
            IsStarted = true;
            return;
        }

        SetUnusual(row, isNegative, mantissa, decimals);
    }

    /// <summary>Sets a sample that is written with an exponent.</summary>
    public void Set(int row, double value)
    {
        IsUniform = false;
        SetFloat(row, value);
    }

    /// <summary>Gives the samples away and goes on with the arrays that the slice had.</summary>
    public void GiveTo(ColumnSlice slice, int count)
    {
        (slice.Codes, _codes) = (_codes, slice.Codes);
        (slice.Values, _values) = (_values, slice.Values);
        (slice.NegativeZeros, _negativeZeros) = (_negativeZeros, slice.NegativeZeros);
        (slice.Count, slice.IsFloat, slice.Decimals) = (count, IsFloat, Decimals);
        slice.Style = Style;
        IsFloat = false;
        _negativeZeros.Clear();
    }

    /// <summary>A row that is read again must not be noted twice.</summary>
    private void NoteNegativeZero(int row)
    {
        if (_negativeZeros is not [.., var last] || last < row)
        {
            _negativeZeros.Add(row);
        }
    }

    private void SetUnusual(int row, bool isNegative, long mantissa, int decimals)
    {
        WrittenDecimals = IsStarted ? WrittenDecimals : decimals;
        IsUniform &= decimals == WrittenDecimals;
        IsStarted = true;
        if (!IsFloat && decimals > Decimals && decimals <= PowersOfTen.MostDecimals)
        {
            Refine(row, decimals);
        }

        var isCoarser = decimals <= Decimals && Decimals - decimals <= PowersOfTen.MostDecimals;
        var factor = isCoarser ? PowersOfTen.AsInteger(Decimals - decimals) : 0;
        if (!IsFloat && isCoarser && mantissa <= int.MaxValue / factor)
        {
            var code = (int)(mantissa * factor);
            _codes[row] = isNegative ? -code : code;
            return;
        }

        var value = mantissa / PowersOfTen.AsDouble(decimals);
        SetFloat(row, isNegative ? -value : value);
    }

    private void SetFloat(int row, double value)
    {
        ToFloat(row);
        _values[row] = value;
    }

    private void Refine(int rows, int decimals)
    {
        var factor = PowersOfTen.AsInteger(decimals - Decimals);
        var most = int.MaxValue / factor;
        foreach (var code in _codes.AsSpan(0, rows))
        {
            if (Math.Abs((long)code) > most)
            {
                ToFloat(rows);
                return;
            }
        }

        foreach (ref var code in _codes.AsSpan(0, rows))
        {
            code = (int)(code * factor);
        }

        Decimals = decimals;
    }

    private void ToFloat(int rows)
    {
        if (IsFloat)
        {
            return;
        }

        _values = _values.Length == 0 ? new double[Capacity] : _values;
        for (var i = 0; i < rows; i++)
        {
            _values[i] = _codes[i] / PowersOfTen.AsDouble(Decimals);
        }

        (IsFloat, IsFixedDecimal) = (true, false);
    }
}
