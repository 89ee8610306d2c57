using System.Text.RegularExpressions;
using WeldTrace.Engineering.Tests.Checks;
using WeldTrace.Engineering.Units;

namespace WeldTrace.Engineering.Tests.Units;

/// <summary>Every row of j_units.csv: exact conversions computed from the base definitions, two published values.</summary>
public sealed partial class UnitChecksTests
{
    private static readonly Dictionary<string, string> Names = new()
    {
        ["inch"] = "in",
        ["foot"] = "ft",
        ["square inch"] = "in²",
        ["cubic inch"] = "in³",
        ["cubic foot"] = "ft³",
        ["US gallon"] = "US gal",
        ["pound"] = "lb",
        ["pound-force"] = "lbf",
        ["foot pound-force"] = "ft·lbf",
        ["inch pound-force"] = "lbf·in",
        ["foot pound-force per minute"] = "ft·lbf/min",
        ["horsepower (550 ft lbf/s)"] = "hp",
        ["Btu (IT)"] = "Btu",
        ["degree"] = "deg",
    };

    public static TheoryData<int, string> Data { get; } = new CheckTable("j_units.csv").Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void Convert_CheckedRow_MatchesExpected(int index, string label)
    {
        var row = CheckRow.All("j_units.csv")[index];
        Assert.Equal(label, row.ToString());
        row.Matches(Compute(row));
    }

    private static double Compute(CheckRow row) =>
        row switch
        {
            { Quantity: "temperature in degC" } => UnitCatalogue.Convert(row["degF"], "°F", "°C"),
            { Quantity: "temperature in K" } => UnitCatalogue.Convert(row["degF"], "°F", "K"),
            { Quantity: "temperature difference" } => UnitCatalogue.Convert(row["dF"], "Δ°F", "ΔK"),
            { Quantity: "absolute pressure" } => UnitCatalogue.Convert(
                row["p_gauge_bar"],
                "bar",
                "Pa"
            ) + row["p_atm_Pa"],
            _ => ConvertNamed(row),
        };

    private static double ConvertNamed(CheckRow row)
    {
        var parts = NamedConversion().Match(row.Quantity);
        Assert.True(parts.Success, row.Quantity);
        var value = double.Parse(
            parts.Groups["value"].Value,
            System.Globalization.CultureInfo.InvariantCulture
        );
        var from = parts.Groups["from"].Value;
        var isTorque = row.Unit == "N m" && from == "ft lbf";
        return UnitCatalogue.Convert(
            value,
            isTorque ? "lbf·ft" : Names.GetValueOrDefault(from, from),
            row.Unit
        );
    }

    [GeneratedRegex(@"^(?<value>[\d.]+) (?<from>.+) in (?<to>[^,]+)(, published)?$")]
    private static partial Regex NamedConversion();
}
