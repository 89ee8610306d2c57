namespace WeldTrace.Engineering.Tests.Checks;

/// <summary>Says for the rows of one table how the program computes the quantity named there.</summary>
internal sealed class CheckTable(string file)
{
    private readonly List<(Func<CheckRow, bool> Fits, Action<CheckRow> Check)> _checks = [];

    public IReadOnlyList<CheckRow> Rows { get; } = CheckRow.All(file);

    /// <summary>Row numbers with labels of every row, as theory data.</summary>
    public TheoryData<int, string> Data
    {
        get
        {
            var data = new TheoryData<int, string>();
            foreach (var row in Rows)
            {
                data.Add(row.Row, row.ToString());
            }

            return data;
        }
    }

    public CheckTable Number(string group, string quantity, Func<CheckRow, double> compute) =>
        Add(group, quantity, row => row.Matches(compute(row)));

    public CheckTable Text(string group, string quantity, Func<CheckRow, string> compute) =>
        Add(group, quantity, row => row.Matches(compute(row)));

    /// <summary>The value that the table calls wrong; the program must not produce it.</summary>
    public CheckTable Wrong(string group, string quantity, Func<CheckRow, double> compute) =>
        Add(
            group,
            quantity,
            row => Assert.NotInRange(compute(row) / row.ExpectedNumber, 0.9999, 1.0001)
        );

    /// <summary>The table gives a value that must not come out because the program refuses.</summary>
    public CheckTable Refused(string group, string quantity, Func<CheckRow, bool> isRefused) =>
        Add(group, quantity, row => Assert.True(isRefused(row)));

    public void Run(int index)
    {
        var row = Rows[index];
        var fitting = _checks.FirstOrDefault(check => check.Fits(row));
        Assert.True(fitting.Check is not null, $"No check is written for {row}.");
        fitting.Check(row);
    }

    private CheckTable Add(string group, string quantity, Action<CheckRow> check)
    {
        _checks.Add((row => IsOf(row.Id, group) && row.Quantity == quantity, check));
        return this;
    }

    private static bool IsOf(string id, string group) =>
        group.Length == 0 || id == group || id.StartsWith(group + ".", StringComparison.Ordinal);
}
