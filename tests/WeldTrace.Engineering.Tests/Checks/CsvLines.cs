using System.Text;

namespace WeldTrace.Engineering.Tests.Checks;

internal static class CsvLines
{
    public static IEnumerable<IReadOnlyList<string>> Read(string file)
    {
        var path = Path.Combine(AppContext.BaseDirectory, "Checks", file);
        return File.ReadLines(path).Where(line => line.Length > 0 && line[0] != '#').Select(Split);
    }

    private static List<string> Split(string line)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        var isQuoted = false;
        foreach (var letter in line)
        {
            if (letter == '"')
            {
                isQuoted = !isQuoted;
            }
            else if (letter == ',' && !isQuoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else
            {
                field.Append(letter);
            }
        }

        fields.Add(field.ToString());
        return fields;
    }
}
