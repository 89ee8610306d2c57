using Microsoft.VisualBasic.FileIO;

namespace WeldTrace.Web.Tests.Lists;

/// <summary>A CSV file as another program reads it.</summary>
internal static class CsvLines
{
    public static async Task<IReadOnlyList<IReadOnlyList<string>>> OfAsync(
        HttpResponseMessage answer
    )
    {
        using var reader = new TextFieldParser(
            await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken)
        );
        reader.SetDelimiters(",");
        List<IReadOnlyList<string>> lines = [];
        while (!reader.EndOfData)
        {
            lines.Add(reader.ReadFields()!);
        }

        return lines;
    }
}
