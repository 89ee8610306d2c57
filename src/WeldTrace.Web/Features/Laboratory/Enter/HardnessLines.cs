using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Features.Laboratory.Enter;

/// <summary>Reads indentations as they are pasted: a line each, position and hardness with a space, tab or semicolon between.</summary>
internal static class HardnessLines
{
    private const int MostLines = 60;

    public static IReadOnlyList<HardnessRow> Read(string? text, List<Refusal> refusals)
    {
        List<HardnessRow> rows = [];
        var lines = (text ?? "").Split('\n', StringSplitOptions.TrimEntries);
        for (var i = 0; i < lines.Length && rows.Count <= MostLines; i++)
        {
            var parts = lines[i]
                .Split((char[])[' ', '\t', ';'], StringSplitOptions.RemoveEmptyEntries);
            if (parts.Length == 0)
            {
                continue;
            }

            if (
                parts.Length == 2
                && Measured.TryRead(parts[0].Replace('−', '-'), "mm", out var position)
                && Measured.TryRead(parts[1], "HV", out var hardness)
            )
            {
                rows.Add(new(position, hardness));
                continue;
            }

            var shown = lines[i].Length > 30 ? lines[i][..29] + "…" : lines[i];
            refusals.Add(
                new(
                    "points",
                    $"Line {i + 1}, '{shown}', is no indentation; write position and hardness, for instance -4 121.",
                    nameof(EnterLaboratoryForm.Points)
                )
            );
        }

        return rows;
    }
}
