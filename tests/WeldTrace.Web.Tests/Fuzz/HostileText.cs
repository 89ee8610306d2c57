using System.Globalization;
using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Tests.Fuzz;

/// <summary>What somebody who means harm, or whose cat walks over the keys, puts into a field; and now and then what belongs there.</summary>
internal static class HostileText
{
    private const int Huge = 70_000;

    /// <summary>Values that a browser can send, and no field wants.</summary>
    public static IReadOnlyList<string> Wrong { get; } =
    [
        "",
        " ",
        "\t\r\n",
        "NaN",
        "Infinity",
        "-Infinity",
        "∞",
        "1e999",
        "-1e999",
        "1e-999",
        "-1",
        "-0.0",
        "0",
        "0.0000000000000000000000000001",
        "79228162514264337593543950335",
        "-79228162514264337593543950335",
        "2147483647",
        "2147483648",
        "-2147483648",
        "9223372036854775808",
        "999999999999999999999999",
        "12,5",
        "1.234,5",
        "1,234.5",
        "1 234",
        "１２",
        "٣",
        "0x1F",
        "1_000",
        "+5",
        "5.",
        ".5",
        "--5",
        "0001-01-01",
        "9999-12-31",
        "2026-02-30",
        "1900-02-29",
        "10000-01-01",
        "01/02/2026",
        "99:99",
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>",
        "&lt;b&gt;&#0;&amp;",
        "'; DROP TABLE vessels; --",
        "\\'; SELECT pg_sleep(9); --",
        "%_\\%",
        "{0} {1:N9999}",
        "=cmd|' /C calc'!A0",
        "../../etc/passwd",
        "00000000-0000-0000-0000-000000000000",
        "ffffffff-ffff-ffff-ffff-ffffffffffff",
        "not-a-guid",
        "null",
        "undefined",
        "true",
        "on",
        "\u0001\u0007\u001b[31m",
        "\u200b\u200e\u202e\ufeff",
        "e\u0301\u0301\u0301\u0301\u0301\u0301",
        "\U0001F468\u200D\U0001F469\u200D\U0001F467",
        "\ud800",
        "a\udc00b",
        "\0",
        "NR10\0-0001",
        "\ufffe\uffff",
        "500,100 500,110",
        "NaN,NaN 1e999,0",
        ",,,,;;;;",
        "1 2\n3 x\n\n5 6 7",
        new('9', 400),
        new('x', 5_000),
        new('\u4e00', Huge),
        string.Concat(Enumerable.Repeat("1 1\n", 5_000)),
    ];

    // So that reading gets further than the first field.
    private static readonly string[] Right =
    [
        "1",
        "3",
        "12.50",
        "20",
        "100",
        "0.05",
        "2026-01-15",
        "J1",
        "J1/2",
        "NR10-0001",
        "6061",
        "T6",
        "90",
        "mm",
        "bar",
        "a plain sentence",
        "10,10 200,10",
        "0 95\n2 96\n4 88",
        .. typeof(Refusal)
            .Assembly.GetTypes()
            .Where(t => t.IsEnum && t.IsPublic)
            .SelectMany(Enum.GetNames)
            .Distinct(),
    ];

    /// <summary>A value, as often right as wrong.</summary>
    public static string? Any(Random random) =>
        random.Next(8) switch
        {
            0 => null,
            1 or 2 or 3 => Right[random.Next(Right.Length)],
            4 => random
                .NextInt64(-1_000_000, 1_000_000)
                .ToString(CultureInfo.InvariantCulture)
                .Insert(0, random.Next(4) == 0 ? "0." : ""),
            _ => Wrong[random.Next(Wrong.Count)],
        };
}
