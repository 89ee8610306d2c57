namespace WeldTrace.Verify;

/// <summary>The command: 0 verified, 1 not verified, 2 asked wrongly.</summary>
public static class VerifyCommand
{
    private const string Usage = """
        usage: WeldTrace.Verify <bundle.zip> [--key <fingerprint or PEM file>]
        Checks a vessel's history bundle, or a collection of them, offline. Exit status: 0 verified, 1 not verified, 2 wrong usage.
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
            return Verify(bundle, asked.Fingerprint, output) ? 0 : 1;
        }
        catch (Exception problem)
            when (problem is FormatException or IOException or UnauthorizedAccessException)
        {
            error.WriteLine(PlainText.Of(problem.Message));
            error.WriteLine(Usage);
            return 2;
        }
    }

    private static bool Verify(Stream file, string? fingerprint, TextWriter output)
    {
        if (CollectionVerifier.IsCollection(file))
        {
            var collection = CollectionVerifier.Verify(file, fingerprint);
            CollectionPrint.Write(collection, fingerprint is not null, output);
            return collection.IsVerified;
        }

        var bundle = BundleVerifier.Verify(file, fingerprint);
        BundlePrint.Write(bundle, fingerprint is not null, output);
        return bundle.IsVerified;
    }
}
