using System.Globalization;

namespace WeldTrace.Engineering.Tests.Checks;

/// <summary>One row of a table of checked values: inputs, expected value, tolerance, source.</summary>
public sealed record CheckRow(
    int Row,
    string Id,
    string Formula,
    string InputText,
    string Quantity,
    string Expected,
    string Unit,
    double RelativeTolerance,
    double AbsoluteTolerance,
    string Tag,
    string Source,
    string Note
)
{
    private IReadOnlyDictionary<string, string>? _inputs;

    private IReadOnlyDictionary<string, string> Inputs => _inputs ??= Parse(InputText);

    public static IReadOnlyList<CheckRow> All(string file) =>
        [.. CsvLines.Read(file).Skip(1).Select((fields, row) => From(row, fields))];

    public bool Has(string name) => Inputs.ContainsKey(name);

    public string Text(string name) =>
        Inputs.TryGetValue(name, out var text)
            ? text
            : throw new KeyNotFoundException($"{Id}: no input '{name}' in '{InputText}'.");

    public double this[string name] => Number(Text(name));

    public double Or(string name, double otherwise) => Has(name) ? this[name] : otherwise;

    public double[] List(string name) => [.. Text(name).Split('|').Select(Number)];

    public double ExpectedNumber => Number(Expected);

    public void Matches(double actual)
    {
        var tolerance = Math.Max(RelativeTolerance * Math.Abs(ExpectedNumber), AbsoluteTolerance);
        var difference = Math.Abs(actual - ExpectedNumber);
        Assert.True(
            difference <= tolerance + RoundingOfPrint(),
            $"{Id} {Quantity}: expected {Expected} {Unit}, got {actual:R} (difference {difference:E2}, allowed {tolerance:E2})."
        );
    }

    public void Matches(string actual) => Assert.Equal(Expected, actual);

    public override string ToString() => $"{Id} [{Row}] {Quantity}";

    /// <summary>Half a unit of the last printed digit, for values printed with ten significant digits or more.</summary>
    private double RoundingOfPrint()
    {
        var mantissa = Expected.Split('e', 'E')[0];
        var digits = mantissa.Replace(".", "", StringComparison.Ordinal).TrimStart('-', '0').Length;
        var decimals = mantissa.Contains('.', StringComparison.Ordinal)
            ? mantissa.Length - mantissa.IndexOf('.', StringComparison.Ordinal) - 1
            : 0;
        var scale = Number("1" + Expected[mantissa.Length..]);
        return digits >= 10 ? 0.5 * Math.Pow(10, -decimals) * scale : 0;
    }

    private static double Number(string text) =>
        double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static CheckRow From(int row, IReadOnlyList<string> f) =>
        new(row, f[0], f[1], f[2], f[3], f[4], f[5], Number(f[6]), Number(f[7]), f[8], f[9], f[11]);

    private static Dictionary<string, string> Parse(string text)
    {
        var inputs = new Dictionary<string, string>();
        foreach (var pair in text.Split(';', StringSplitOptions.TrimEntries))
        {
            var parts = pair.Split('=', 2);
            if (parts.Length == 2)
            {
                inputs[parts[0]] = parts[1];
            }
        }

        return inputs;
    }
}
