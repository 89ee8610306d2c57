using System.Globalization;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Features.Procedures;

/// <summary>What the drawing of the tool lays down, beside the procedure that names it.</summary>
internal static class ToolLines
{
    public static IEnumerable<(string Name, string Text)> Of(ToolDesign? design)
    {
        if (design?.Geometry is not { } tool)
        {
            yield break;
        }

        yield return ("Shoulder diameter", Millimetres(tool.ShoulderDiameter));
        yield return ("Pin diameter", Millimetres(tool.PinDiameter));
        yield return ("Pin length", Millimetres(tool.PinLength));
        yield return ("Material of pin and shoulder", tool.Material);
        yield return (
            "Service life limit",
            string.Create(CultureInfo.InvariantCulture, $"{tool.LifeLimit.Metres:0.###} m of weld")
        );
    }

    private static string Millimetres(Length length) =>
        string.Create(CultureInfo.InvariantCulture, $"{length.Millimetres:0.###} mm");
}
