using System.Text;

namespace WeldTrace.Web.Importing;

/// <summary>Cells of one line, or of several where a quoted cell has line breaks.</summary>
/// <param name="Line">Line of the text at which it begins, from 1.</param>
/// <param name="Cells">Cells without their quotation marks.</param>
internal sealed record CsvLine(int Line, IReadOnlyList<string> Cells);

/// <summary>Splits text into cells as RFC 4180 says, with the separator that its first line uses.</summary>
internal sealed class CsvLines
{
    private readonly string _text;
    private readonly char _separator;
    private int _at;
    private int _line = 1;

    public CsvLines(string text)
    {
        _text = text;
        _separator = SeparatorOf(text);
    }

    /// <summary>All lines that aren't blank.</summary>
    /// <exception cref="FormatException">A quotation mark is never closed, or text follows a closed one; the message is the number of the line.</exception>
    public IEnumerable<CsvLine> Read()
    {
        while (_at < _text.Length)
        {
            var line = new CsvLine(_line, ReadLine());
            if (line.Cells.Any(c => !string.IsNullOrWhiteSpace(c)))
            {
                yield return line;
            }
        }
    }

    private List<string> ReadLine()
    {
        List<string> cells = [];
        while (true)
        {
            cells.Add(_at < _text.Length && _text[_at] == '"' ? ReadQuoted() : ReadPlain());
            if (_at >= _text.Length)
            {
                return cells;
            }

            var end = _text[_at++];
            if (end == _separator)
            {
                continue;
            }

            if (end == '\r' && _at < _text.Length && _text[_at] == '\n')
            {
                _at++;
            }

            _line++;
            return cells;
        }
    }

    private string ReadPlain()
    {
        var begin = _at;
        while (_at < _text.Length && !IsEnd(_text[_at]))
        {
            _at++;
        }

        return _text[begin.._at];
    }

    private string ReadQuoted()
    {
        var begin = _line;
        var cell = new StringBuilder();
        for (_at++; _at < _text.Length; _at++)
        {
            if (_text[_at] != '"')
            {
                _line += _text[_at] == '\n' ? 1 : 0;
                cell.Append(_text[_at]);
            }
            else if (_at + 1 < _text.Length && _text[_at + 1] == '"')
            {
                cell.Append('"');
                _at++;
            }
            else
            {
                _at++;
                return _at >= _text.Length || IsEnd(_text[_at])
                    ? cell.ToString()
                    : throw Broken(begin);
            }
        }

        throw Broken(begin);
    }

    private bool IsEnd(char c) => c == _separator || c is '\r' or '\n';

    private static FormatException Broken(int line) =>
        new(line.ToString(System.Globalization.CultureInfo.InvariantCulture));

    private static char SeparatorOf(string text)
    {
        var head = text.AsSpan().TrimStart();
        var end = head.IndexOfAny('\r', '\n');
        var line = end < 0 ? head : head[..end];
        return line.Contains('\t') ? '\t'
            : line.Count(';') > line.Count(',') ? ';'
            : ',';
    }
}
