using WeldTrace.Domain.Procedures;

namespace WeldTrace.Domain.Qualification;

/// <summary>Compares a procedure with the range of a qualification: which essential variables have left it.</summary>
public static class RangeComparison
{
    /// <summary>Every essential variable that lies outside, each in one sentence; empty when the qualification covers the procedure.</summary>
    public static IReadOnlyList<string> Against(
        this QualificationRange range,
        ProcedureContent content
    )
    {
        ArgumentNullException.ThrowIfNull(range);
        ArgumentNullException.ThrowIfNull(content);
        List<string> against = [];
        AddMaterial(against, range, content);
        if (!Same(range.JointType, content.JointType))
        {
            against.Add($"Joint type: {content.JointType}, qualified {range.JointType}.");
        }

        if (range.ToolDesignId != content.ToolDesignId)
        {
            against.Add(
                $"Tool design: {content.ToolDesignLabel}, qualified {range.ToolDesignLabel}."
            );
        }

        AddWindows(against, range, content);
        AddTested(against, range, content);
        return against;
    }

    private static void AddMaterial(
        List<string> against,
        QualificationRange range,
        ProcedureContent content
    )
    {
        var other = content.DetailsOrNone.Other;
        if (
            !range.CoversMaterial(content.Alloy, content.Temper)
            || (other is not null && !range.CoversMaterial(other.Alloy, other.Temper))
        )
        {
            var both = other is null ? "" : $" with {other.Alloy}-{other.Temper}";
            against.Add(
                $"Parent material: {content.Alloy}-{content.Temper}{both}, qualified {RangeWords.Materials(range)}."
            );
        }

        AddThickness(against, "Thickness", range.Thickness, content.Thickness);
        if ((other is null) != (range.OtherThickness is null))
        {
            against.Add(
                "Other side: the qualification was made with sides of the other kind, alike or different."
            );
        }
        else if (other is not null)
        {
            AddThickness(against, "Thickness, other side", range.OtherThickness!, other.Thickness);
        }
    }

    private static void AddThickness(
        List<string> against,
        string name,
        Limits.ThicknessRange range,
        Engineering.Quantities.Length thickness
    )
    {
        if (!QualificationRange.Covers(range, thickness))
        {
            against.Add(
                FormattableString.Invariant(
                    $"{name}: {thickness.Millimetres:0.###} mm, qualified {RangeWords.Of(range)}."
                )
            );
        }
    }

    private static void AddWindows(
        List<string> against,
        QualificationRange range,
        ProcedureContent content
    )
    {
        foreach (var window in content.Windows.Where(RangeComputation.IsEssential))
        {
            var qualified = range.Windows.FirstOrDefault(w => w.Parameter == window.Parameter);
            if (
                qualified is null
                || IsBelow(window.LowerSi, qualified.LowerSi)
                || IsBelow(qualified.UpperSi, window.UpperSi)
            )
            {
                against.Add(
                    FormattableString.Invariant(
                        $"{ParameterNames.Of(window.Parameter)}: {window.Lower} to {window.Upper} {window.Unit}, qualified {qualified?.Words ?? "without a window"}."
                    )
                );
            }
        }

        foreach (var missing in range.Windows.Where(w => content.WindowOf(w.Parameter) is null))
        {
            against.Add(
                $"{ParameterNames.Of(missing.Parameter)}: no window any more, qualified {missing.Words}."
            );
        }
    }

    private static void AddTested(
        List<string> against,
        QualificationRange range,
        ProcedureContent content
    )
    {
        var now = RangeComputation.AsTested(content).ToList();
        foreach (var name in now.Select(l => l.Name).Union(range.AsTested.Select(t => t.Name)))
        {
            var (text, tested) = (
                now.FirstOrDefault(l => l.Name == name)?.Text,
                range.Tested(name)
            );
            if (!Same(text, tested))
            {
                against.Add(
                    $"{name}: {text ?? "not laid down as essential"}, qualified {tested ?? "without it"}."
                );
            }
        }
    }

    // Limits in other units must not fail by the last bits of a conversion.
    private static bool IsBelow(double left, double right) =>
        left < right - (Math.Abs(right) * 1e-9);

    private static bool Same(string? left, string? right) =>
        string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
