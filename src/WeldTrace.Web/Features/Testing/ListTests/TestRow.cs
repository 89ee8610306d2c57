using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Web.Features.Testing.ListTests;

/// <summary>One test in the list.</summary>
public sealed record TestRow
{
    public required Guid Id { get; init; }

    /// <summary>leak, pressure or section.</summary>
    public required string Kind { get; init; }

    public required string Serial { get; init; }

    public required int Step { get; init; }

    public required DateTimeOffset TestedAt { get; init; }

    public required string Inspector { get; init; }

    public required Verdict? Verdict { get; init; }

    public required DateTimeOffset? SignedAt { get; init; }

    public required bool IsWithdrawn { get; init; }

    public string Href =>
        Kind switch
        {
            TestKinds.Leak => Routes.LeakTest(Id),
            TestKinds.Pressure => Routes.PressureTest(Id),
            _ => Routes.Section(Id),
        };

    public string KindWord => TestKinds.Word(Kind);

    public string State =>
        IsWithdrawn ? "withdrawn"
        : SignedAt is null ? "not signed"
        : "signed";
}

/// <summary>The kinds of tests in the list, as its address says them.</summary>
public static class TestKinds
{
    public const string Leak = "leak";
    public const string Pressure = "pressure";
    public const string Section = "section";

    public static string Word(string kind) =>
        kind switch
        {
            Leak => "leak test",
            Pressure => "pressure test",
            _ => "section",
        };
}
