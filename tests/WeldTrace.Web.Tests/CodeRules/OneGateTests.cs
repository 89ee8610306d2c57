using System.Reflection;
using System.Text.RegularExpressions;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Web.Tests.CodeRules;

/// <summary>No path records a weld run around the gate: one act makes runs, one handler asks for it, and no statement writes one.</summary>
public sealed partial class OneGateTests
{
    [Fact]
    public void Runs_AreMadeByTheActThatAsksTheGate()
    {
        const BindingFlags all =
            BindingFlags.Static
            | BindingFlags.Instance
            | BindingFlags.Public
            | BindingFlags.NonPublic
            | BindingFlags.DeclaredOnly;
        Assert.All(typeof(WeldRun).GetConstructors(all), c => Assert.True(c.IsPrivate));
        var makers = typeof(WeldRun)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetMethods(all))
            .Where(m =>
                !m.IsPrivate
                && (m.ReturnType == typeof(WeldRun) || m.ReturnType == typeof(Outcome<WeldRun>))
                && !m.IsSpecialName
            );
        Assert.Equal(
            [$"{nameof(WeldRun)}.{nameof(WeldRun.Start)}"],
            makers.Select(m => $"{m.DeclaringType!.Name}.{m.Name}")
        );
    }

    [Fact]
    public void Runs_AreStartedByOneHandler() =>
        Assert.Equal(
            ["src/WeldTrace.Web/Features/Welding/StartRunHandler.cs"],
            FilesWith(Starting())
        );

    [Fact]
    public void Runs_AreWrittenByNoStatement() => Assert.Empty(FilesWith(Writing()));

    private static IEnumerable<string> FilesWith(Regex wanted) =>
        SourceTree
            .Files("src", ".cs", ".razor")
            .Where(f => wanted.IsMatch(f.Text))
            .Select(f => f.Path);

    [GeneratedRegex(@"WeldRun\.Start\(")]
    private static partial Regex Starting();

    [GeneratedRegex(
        @"(insert\s+into|update|copy)\s+""?weld_runs\b|WeldRuns\b[^;]*\.ExecuteUpdate",
        RegexOptions.IgnoreCase
    )]
    private static partial Regex Writing();
}
