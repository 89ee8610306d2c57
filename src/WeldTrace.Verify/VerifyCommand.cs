using System.Globalization;

namespace WeldTrace.Verify;

/// <summary>The command: 0 verified, 1 not verified, 2 asked wrongly.</summary>
public static class VerifyCommand
{
    private const string Usage = """
        usage: WeldTrace.Verify <bundle.zip> [--key <fingerprint or PEM file>]
        Checks a vessel's history bundle offline. Exit status: 0 verified, 1 not verified, 2 wrong usage.
        """;

    /// <summary>Runs the command.</summary>
    /// <param name="args">The words after the command's name.</param>
    /// <param name="output">Where the result goes.</param>
    /// <param name="error">Where usage errors go.</param>
    public static int Run(IReadOnlyList<string> args, TextWriter output, TextWriter error)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(error);
        try
        {
            var asked = VerifyArguments.Read(args);
            using var bundle = File.OpenRead(asked.Bundle);
            var report = BundleVerifier.Verify(bundle, asked.Fingerprint);
            Print(report, asked.Fingerprint is not null, output);
            return report.IsVerified ? 0 : 1;
        }
        catch (Exception problem)
            when (problem is FormatException or IOException or UnauthorizedAccessException)
        {
            error.WriteLine(PlainText.Of(problem.Message));
            error.WriteLine(Usage);
            return 2;
        }
    }

    private static void Print(BundleReport report, bool keyWasNamed, TextWriter output)
    {
        if (report.IsVerified)
        {
            output.WriteLine("verified");
            PrintSummary(report, output);
            output.WriteLine(
                keyWasNamed
                    ? "The key is the one that you named."
                    : "Compare the key with one that the site gave you by another way (telephone, letter);"
                        + " then run this again with --key."
            );
            return;
        }
        output.WriteLine($"NOT VERIFIED, problems: {report.Problems.Count}");
        foreach (var problem in report.Problems)
        {
            var where = problem.Path.Length > 0 ? problem.Path + ": " : "";
            output.WriteLine(PlainText.Of($"  {Word(problem.Kind)} {where}{problem.Message}"));
        }
        foreach (var note in report.Notes)
        {
            output.WriteLine($"  note: {note}");
        }
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
        foreach (var (name, value) in rows)
        {
            if (value is not null)
            {
                output.WriteLine($"  {name, -8} {PlainText.Of(value)}");
            }
        }
    }

    private static string? LedgerState(BundleReport report) =>
        report.Checkpoint is { } checkpoint
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"{checkpoint.TreeSize} entries at {Time(checkpoint.At)}, root {checkpoint.RootHex}"
            )
            : null;

    private static string? Time(DateTimeOffset? time) =>
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
