using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Importing;

/// <summary>A list that is handed in as a file, or pasted; after the preview it is carried on as text, where it can be mended.</summary>
public sealed class ImportForm
{
    public IFormFile? File { get; set; }

    public string? Text { get; set; }

    /// <summary>Whether to import; otherwise only to look.</summary>
    public bool IsConfirmed { get; set; }
}

/// <summary>One line as it would be imported.</summary>
/// <param name="Line">Line of the file.</param>
/// <param name="Name">What the record will be called.</param>
/// <param name="What">What it will be, in words.</param>
/// <param name="Problems">Everything that speaks against it.</param>
public sealed record ImportLine(int Line, string Name, string What, IReadOnlyList<string> Problems);

/// <summary>What an import would do, or did.</summary>
/// <param name="Lines">Lines.</param>
/// <param name="Problems">Everything that is wrong, line by line.</param>
/// <param name="IsDone">Whether it was imported.</param>
public sealed record ImportResult(
    IReadOnlyList<ImportLine> Lines,
    IReadOnlyList<Refusal> Problems,
    bool IsDone
)
{
    public bool IsClean => Problems.Count == 0 && Lines.Count > 0;

    /// <summary>What could not even be read as a list.</summary>
    public static ImportResult Unreadable(IReadOnlyList<Refusal> problems) =>
        new([], problems, false);
}
