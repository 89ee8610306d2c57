using System.Globalization;

namespace WeldTrace.Verify;

/// <summary>Tells on a terminal what was found in a bundle.</summary>
internal static class BundlePrint
{
    public static void Write(BundleReport report, bool keyWasNamed, TextWriter output)
    {
        if (report.IsVerified)
        {
            output.WriteLine("verified");
            PrintSummary(report, output);
            WriteKeyAdvice(keyWasNamed, output);
            return;
        }
        output.WriteLine($"NOT VERIFIED, problems: {report.Problems.Count}");
        WriteProblems(report.Problems, report.Notes, "  ", output);
        PrintSummary(report, output);
    }

    private static void PrintSummary(BundleReport report, TextWriter output)
    {
        var rows = new (string Name, string? Value)[]
        {
            ("vessel", report.Manifest?.VesselSerial),
            ("site", report.Manifest?.SiteName),
            ("made at", Time(report.Manifest?.MadeAt)),
            ("files", report.Manifest?.Files.Count.ToString(CultureInfo.InvariantCulture)),
            ("entries", report.Entries.ToString(CultureInfo.InvariantCulture)),
            ("ledger", LedgerState(report)),
            ("key", report.Fingerprint),
        };
        WriteRows(rows, output);
    }

    public static void WriteProblems(
        IReadOnlyList<BundleProblem> problems,
        IReadOnlyList<string> notes,
        string indent,
        TextWriter output
    )
    {
        foreach (var problem in problems)
        {
            var where = problem.Path.Length > 0 ? problem.Path + ": " : "";
            output.WriteLine(
                indent + PlainText.Of($"{Word(problem.Kind)} {where}{problem.Message}")
            );
        }
        foreach (var note in notes)
        {
            output.WriteLine($"{indent}note: {note}");
        }
    }

    public static void WriteRows(IEnumerable<(string Name, string? Value)> rows, TextWriter output)
    {
        foreach (var (name, value) in rows)
        {
            if (value is not null)
            {
                output.WriteLine($"  {name, -8} {PlainText.Of(value)}");
            }
        }
    }

    public static void WriteKeyAdvice(bool keyWasNamed, TextWriter output) =>
        output.WriteLine(
            keyWasNamed
                ? "The key is the one that you named."
                : "Compare the key with one that the site gave you by another way (telephone, letter);"
                    + " then run this again with --key."
        );

    private static string? LedgerState(BundleReport report) =>
        report.Checkpoint is { } checkpoint
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{checkpoint.TreeSize} entries at {Time(checkpoint.At)}, root {checkpoint.RootHex}"
            )
            : null;

    public static string? Time(DateTimeOffset? time) =>
        time?.ToString("yyyy-MM-dd HH:mm:ss 'UTC'", CultureInfo.InvariantCulture);

    private static string Word(ProblemKind kind) =>
        kind switch
        {
            ProblemKind.Refused => "refused",
            ProblemKind.Unreadable => "unreadable",
            ProblemKind.Changed => "changed",
            ProblemKind.Removed => "removed",
            ProblemKind.Added => "added",
            ProblemKind.Signature => "wrong signature",
            ProblemKind.Proof => "wrong proof",
            ProblemKind.Record => "differs from ledger",
            ProblemKind.Unnamed => "not named in ledger",
            ProblemKind.Missing => "missing",
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };
}
