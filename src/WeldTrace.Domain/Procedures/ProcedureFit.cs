using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;

namespace WeldTrace.Domain.Procedures;

/// <summary>Whether a procedure suits the tool design and the machine that it names.</summary>
public static class ProcedureFit
{
    /// <summary>What doesn't fit, naming the field; empty when all does.</summary>
    /// <param name="content">What the procedure lays down.</param>
    /// <param name="tool">Tool design that it names; null when it is not known.</param>
    /// <param name="machine">Machine that it names; null when it names none.</param>
    public static IReadOnlyList<Refusal> Check(
        ProcedureContent content,
        ToolDesign? tool,
        Machine? machine = null
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        var checks = new Checks();
        if (tool is not null)
        {
            checks.That(
                tool.Geometry.PinLength <= content.StackThickness,
                "pin-length",
                FormattableString.Invariant(
                    $"The pin of {tool.Label} is {tool.Geometry.PinLength.Millimetres:0.###} mm long, longer than the {content.StackThickness.Millimetres:0.###} mm under it; choose a tool with a shorter pin, or check the thickness."
                ),
                nameof(content.ToolDesignId)
            );
        }

        foreach (var window in content.Windows)
        {
            var beyond = machine?.Capability?.Against(window);
            checks.That(
                beyond is null,
                "capability",
                $"{beyond} Lower the window, or name another machine than {machine?.Name}.",
                $"{window.Parameter}.{nameof(window.Upper)}"
            );
        }

        return checks.Refusals;
    }
}
