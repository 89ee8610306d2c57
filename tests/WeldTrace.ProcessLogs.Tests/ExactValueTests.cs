using System.Globalization;
using CsCheck;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>Numbers are those of a correctly rounded conversion, whatever their form.</summary>
public sealed class ExactValueTests
{
    [Theory]
    [InlineData("8", "8.125", "-0.5", "1000000")]
    [InlineData("+8.1", ".5", "5.", "007.250")]
    [InlineData("1.5e3", "-2E-4", "1e0", "0.1")]
    [InlineData("2147483647", "-2147483648", "0.123456789", "0.1234567891")]
    [InlineData(
        "123456789012345",
        "1234567890123456789",
        "0.000000000000001",
        "3.14159265358979312"
    )]
    [InlineData(" 8.5", "8.5 ", "\"8.5\"", "\" 8.5 \"")]
    [InlineData("-0", "-0.000", "0", "0.0")]
    public async Task ReadAsync_FormsOfNumbers_AreExact(params string[] numbers)
    {
        var values = Enumerable.Range(0, 12).Select(i => numbers[i % numbers.Length]).ToArray();
        var text = "t [s],x\n" + string.Concat(values.Select((value, i) => $"{i},{value}\n"));
        var log = await SmallLog.ReadWholeAsync(
            text,
            new([new("t [s]", LogChannel.Time, "s"), new("x", LogChannel.Other, "")])
        );

        var expected = values.Select(value =>
            double.Parse(value.Trim('"', ' '), CultureInfo.InvariantCulture)
        );
        Assert.Equal(expected, SmallLog.Values(log, 1));
    }

    /// <summary>Any mixture of decimals comes back as the same numbers; with one number of decimals, as the same bytes.</summary>
    [Fact]
    public async Task ReadAsync_AnyFixedDecimals_ComeBackByteForByte()
    {
        var column = Gen.Select(Gen.Int[0, 9], Gen.Int.Array[12, 40]);
        await column.SampleAsync(
            async (decimals, codes) =>
            {
                var numbers = codes.Select(code => Format(code, decimals)).ToArray();
                var text =
                    "t [s],x\n" + string.Concat(numbers.Select((number, i) => $"{i},{number}\n"));
                var log = await SmallLog.ReadWholeAsync(
                    text,
                    new([new("t [s]", LogChannel.Time, "s"), new("x", LogChannel.Other, "")])
                );

                Assert.Equal(
                    numbers.Select(number => double.Parse(number, CultureInfo.InvariantCulture)),
                    SmallLog.Values(log, 1)
                );
                Assert.True(log.Header.CsvIsOriginal || codes.Contains(int.MinValue));
            },
            iter: 200
        );
    }

    [Fact]
    public async Task ReadAsync_MoreDecimalsLater_RefinesTheColumn()
    {
        var text =
            "t [s],x\n"
            + string.Concat(
                Enumerable
                    .Range(0, 40_000)
                    .Select(i => i < 20_000 ? $"{i},{i % 7}.5\n" : $"{i},{i % 7}.25\n")
            );
        var log = await SmallLog.ReadWholeAsync(
            text,
            new([new("t [s]", LogChannel.Time, "s"), new("x", LogChannel.Other, "")])
        );

        Assert.Equal(
            (2, true),
            (log.Header.Columns[1].Decimals, log.Header.Columns[1].IsFixedDecimal)
        );
        Assert.Equal(3.5, SmallLog.Values(log, 1)[10]);
        Assert.Equal(30_000 % 7 + 0.25, SmallLog.Values(log, 1)[30_000]);
        Assert.False(log.Header.CsvIsOriginal);
    }

    [Theory]
    [InlineData("°F", LogChannel.ToolTemperature, 212, 373.15)]
    [InlineData("C", LogChannel.ToolTemperature, 20, 293.15)]
    [InlineData("ft-lb", LogChannel.Torque, 10, 13.558179483314004)]
    [InlineData("U/min", LogChannel.SpindleSpeed, 600, 10)]
    [InlineData("rad/s", LogChannel.SpindleSpeed, 2 * Math.PI, 1)]
    [InlineData("ipm", LogChannel.TravelSpeed, 60, 0.0254)]
    [InlineData("lbf", LogChannel.AxialForce, 1000, 4448.2216152605)]
    [InlineData("deg", LogChannel.AxisAngle, 180, Math.PI)]
    [InlineData("ms", LogChannel.Time, 1500, 1.5)]
    public void ToSi_UsualSpellings_AreExact(
        string unit,
        LogChannel channel,
        double asLogged,
        double si
    )
    {
        var column = new LogColumn(0, "x", channel, unit, 1, 0, true);
        Assert.Equal(si, column.ToSi(asLogged), 12 - (int)Math.Log10(Math.Abs(si) + 1));
    }

    [Fact]
    public void Units_EverySymbol_IsFoundAgain() =>
        Assert.All(LogUnits.All, unit => Assert.Same(unit, LogUnits.Find(unit.Symbol)));

    private static string Format(int code, int decimals)
    {
        var digits = Math.Abs((long)code)
            .ToString(CultureInfo.InvariantCulture)
            .PadLeft(decimals + 1, '0');
        var sign = code < 0 ? "-" : "";
        return decimals == 0 ? sign + digits : $"{sign}{digits[..^decimals]}.{digits[^decimals..]}";
    }
}
