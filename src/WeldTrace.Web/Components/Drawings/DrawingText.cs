using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace WeldTrace.Web.Components.Drawings;

/// <summary>The SVG element text, which Razor markup keeps for itself inside code blocks.</summary>
public sealed class DrawingText : ComponentBase
{
    [Parameter, EditorRequired]
    public double X { get; set; }

    [Parameter, EditorRequired]
    public double Y { get; set; }

    [Parameter, EditorRequired]
    public string Text { get; set; } = "";

    [Parameter]
    public string? Class { get; set; }

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenElement(0, "text");
        builder.AddAttribute(1, "x", PlanGeometry.Number(X));
        builder.AddAttribute(2, "y", PlanGeometry.Number(Y));
        builder.AddAttribute(3, "class", Class);
        builder.AddContent(4, Text);
        builder.CloseElement();
    }
}
