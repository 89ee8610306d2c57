using System.Text;
using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Importing;

/// <summary>A column that an import reads.</summary>
/// <param name="Name">Head of the column, lower case.</param>
/// <param name="Meaning">What it holds.</param>
/// <param name="IsNeeded">Whether the file must have it.</param>
public sealed record ImportColumn(string Name, string Meaning, bool IsNeeded = false);

/// <summary>A line of an import by its columns; a column that the file doesn't have reads as empty.</summary>
/// <param name="Line">Line of the file, from 1.</param>
/// <param name="Cells">Trimmed cells by the name of their column.</param>
public sealed record ImportRow(int Line, IReadOnlyDictionary<string, string> Cells)
{
    public string this[string column] => Cells.GetValueOrDefault(column, "");

    /// <summary>A refusal that tells the line.</summary>
    public Refusal At(Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return refusal with
        {
            Sentence = FormattableString.Invariant($"Line {Line}: {refusal.Sentence}"),
            Field = null,
        };
    }
}

/// <summary>The lines of a file with everything that could not be read.</summary>
public sealed record ImportRows(IReadOnlyList<ImportRow> Rows, IReadOnlyList<Refusal> Problems);

/// <summary>Reads a list as comma, semicolon or tab separated text (RFC 4180) with a head line.</summary>
public static class CsvImport
{
    /// <summary>Longest text in characters.</summary>
    public const int LongestText = 1024 * 1024;

    /// <summary>Most lines below the head.</summary>
    public const int MostRows = 2000;

    private const char ByteOrderMark = '\uFEFF';

    private const string FormulaStarts = "=+-@";

    public static ImportRows Read(
        string? text,
        IReadOnlyList<ImportColumn> columns,
        IReadOnlyList<string>? ignored = null
    )
    {
        ArgumentNullException.ThrowIfNull(columns);
        var problem =
            string.IsNullOrWhiteSpace(text)
                ? "There is nothing to read; choose a file or paste its lines."
            : text.Length > LongestText ? "The list is longer than 1 MB; import it in parts."
            : text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'))
                ? "This is no text but something else, whatever its name says; export the list as CSV."
            : null;
        return problem is not null
            ? new([], [Problem(problem)])
            : ReadRows(text!.TrimStart(ByteOrderMark), columns, ignored ?? []);
    }

    private static ImportRows ReadRows(
        string text,
        IReadOnlyList<ImportColumn> columns,
        IReadOnlyList<string> ignored
    )
    {
        try
        {
            var lines = new CsvLines(text).Read().ToList();
            if (lines.Count < 2)
            {
                return new(
                    [],
                    [Problem("The list needs a head line and at least one line below it.")]
                );
            }

            var heads = lines[0].Cells.Select(h => h.Trim().ToLowerInvariant()).ToList();
            List<Refusal> problems = [.. AgainstHeads(heads, columns, ignored)];
            if (lines.Count - 1 > MostRows)
            {
                problems.Add(
                    Problem(
                        FormattableString.Invariant(
                            $"The list has {lines.Count - 1} lines, at most {MostRows} go at once; import it in parts."
                        )
                    )
                );
            }

            problems.AddRange(
                lines
                    .Where(l => !l.Cells.Skip(heads.Count).All(string.IsNullOrWhiteSpace))
                    .Select(l =>
                        Problem(
                            FormattableString.Invariant(
                                $"Line {l.Line} has {l.Cells.Count} cells, the head line {heads.Count}; put a cell with a comma in quotation marks."
                            )
                        )
                    )
            );
            return new(
                problems.Count > 0 ? [] : [.. lines.Skip(1).Select(l => Row(l, heads))],
                problems
            );
        }
        catch (FormatException broken)
        {
            return new(
                [],
                [Problem($"Line {broken.Message} can't be read; check its quotation marks.")]
            );
        }
    }

    private static Refusal Problem(string sentence) =>
        new("csv", sentence, nameof(ImportForm.Text));

    private static ImportRow Row(CsvLine line, List<string> heads) =>
        new(
            line.Line,
            heads
                .Zip(line.Cells)
                .Where(pair => pair.First.Length > 0)
                .ToDictionary(pair => pair.First, pair => Plain(pair.Second.Trim()))
        );

    private static IEnumerable<Refusal> AgainstHeads(
        List<string> heads,
        IReadOnlyList<ImportColumn> columns,
        IReadOnlyList<string> ignored
    )
    {
        var known = columns.Select(c => c.Name).Concat(ignored).ToHashSet();
        string?[] wrong =
        [
            .. columns
                .Where(c => c.IsNeeded && !heads.Contains(c.Name))
                .Select(c => $"The head line has no column '{c.Name}' ({c.Meaning}); add it."),
            .. heads
                .Where(h => h.Length > 0 && !known.Contains(h))
                .Select(h =>
                    $"Column '{h}' isn't known; take it out, or name it as one of: {string.Join(", ", columns.Select(c => c.Name))}."
                ),
            .. heads
                .GroupBy(h => h)
                .Where(g => g.Key.Length > 0 && g.Count() > 1)
                .Select(g => $"Column '{g.Key}' stands twice in the head line; keep one."),
        ];
        return wrong.OfType<string>().Select(w => new Refusal("head", w, nameof(ImportForm.Text)));
    }

    // An exported cell that a spreadsheet could take for a formula has a quote before it.
    private static string Plain(string cell) =>
        cell.Length > 1
        && cell[0] == '\''
        && FormulaStarts.Contains(cell[1], StringComparison.Ordinal)
            ? cell[1..]
            : cell;

    /// <summary>The text of a file, or what was pasted when there is no file.</summary>
    public static async Task<string> TextOfAsync(ImportForm form, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (form.File is not { Length: > 0 } file)
        {
            return form.Text ?? "";
        }

        using var reader = new StreamReader(
            file.OpenReadStream(),
            Encoding.UTF8,
            detectEncodingFromByteOrderMarks: true
        );
        var buffer = new char[LongestText + 1];
        var read = await reader.ReadBlockAsync(buffer, cancellation);
        return new string(buffer, 0, read);
    }
}
