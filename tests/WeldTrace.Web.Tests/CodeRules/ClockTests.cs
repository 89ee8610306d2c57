using System.Text.RegularExpressions;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>
/// The time comes from the clock that is handed in, so that every record, document and test has the same one. The compiler refuses the
/// calls listed in src/BannedSymbols.txt; this also reads the markup.
/// </summary>
public sealed partial class ClockTests
{
    [Fact]
    public void Code_ReadsNoClockOfItsOwn() =>
        SourceTree.AssertNone(
            SourceTree
                .Files("src", ".cs", ".razor")
                .SelectMany(f => OwnClock().Matches(f.Text).Select(m => $"{f.Path}: {m.Value}")),
            "Ask the TimeProvider:"
        );

    [Theory]
    [InlineData("P:System.DateTime.Now")]
    [InlineData("P:System.DateTime.UtcNow")]
    [InlineData("P:System.DateTimeOffset.Now")]
    [InlineData("P:System.DateTimeOffset.UtcNow")]
    [InlineData("P:System.Threading.Tasks.Task`1.Result")]
    [InlineData("M:System.Threading.Tasks.Task.Wait")]
    public void Compiler_RefusesTheCall(string symbol) =>
        Assert.Contains(
            File.ReadAllLines(Path.Combine(SourceTree.Root, "src", "BannedSymbols.txt")),
            line => line.StartsWith(symbol + ";", StringComparison.Ordinal)
        );

    [GeneratedRegex(@"\b(DateTime|DateTimeOffset)\.(Now|UtcNow|Today)\b|\bGuid\.NewGuid\b")]
    private static partial Regex OwnClock();
}
