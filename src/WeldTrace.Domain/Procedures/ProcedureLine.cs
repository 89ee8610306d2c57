using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Tooling;

namespace WeldTrace.Domain.Procedures;

/// <summary>One field of a procedure as it is read, printed and compared.</summary>
/// <param name="Group">Group in which it stands.</param>
/// <param name="Name">The trade's word for it.</param>
/// <param name="Text">What is laid down, with units.</param>
/// <param name="IsEssential">Whether a change beyond its range asks for requalification.</param>
public sealed record ProcedureLine(
    ProcedureGroup Group,
    string Name,
    string Text,
    bool IsEssential
);

/// <summary>What a procedure names and others have described.</summary>
/// <param name="Tool">Drawing of the tool; null when it isn't at hand.</param>
/// <param name="Machine">Machine; null when the procedure names none.</param>
public sealed record ProcedureObjects(ToolDesign? Tool, Machine? Machine);

/// <summary>The whole of a procedure, field by field; fields left open are missing.</summary>
public static class ProcedureLines
{
    /// <summary>All fields in the order of the sheet, the title left out.</summary>
    /// <param name="content">What the procedure lays down.</param>
    /// <param name="behind">Tool design and machine that it names, whose own particulars then stand beside it.</param>
    public static IReadOnlyList<ProcedureLine> Of(
        ProcedureContent content,
        ProcedureObjects? behind = null
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        var lines = new LineList(content);
        var details = content.DetailsOrNone;
        lines.Add(ProcedureGroup.Identity, "Class of the joint", details.Class?.ToString(), false);
        lines.AddWords(ProcedureGroup.Identity);
        AddMaterial(lines, content, details);
        AddJoint(lines, content, details);
        lines.AddWords(ProcedureGroup.Cleaning);
        lines.Add(
            ProcedureGroup.Cleaning,
            "Longest time from cleaning to welding",
            details.CleaningLimit?.ToString(),
            false
        );
        AddEquipment(lines, content, behind);
        lines.AddWords(ProcedureGroup.Clamping);
        foreach (var window in content.Windows)
        {
            lines.Add(
                ProcedureGroup.Parameters,
                ParameterNames.Of(window.Parameter),
                Text(window),
                window.IsEssential
            );
        }

        lines.Add(
            ProcedureGroup.Parameters,
            "Shortest excursion that counts",
            FormattableString.Invariant($"{content.DebounceSeconds} s")
                + (
                    content.DebounceMillimetres is { } length
                        ? FormattableString.Invariant($", or {length} mm of seam")
                        : ""
                ),
            false
        );
        lines.AddWords(ProcedureGroup.Thermal);
        lines.Add(
            ProcedureGroup.Thermal,
            "Condition after welding",
            details.PostWeld is { } condition ? DetailWords.Of(condition) : null,
            true
        );
        lines.AddWords(ProcedureGroup.AfterWelding);
        lines.Add(ProcedureGroup.AfterWelding, "Notes for the welder", content.Notes, false);
        return lines.Lines;
    }

    /// <summary>A window in one line: set point, limits and what keeps it there.</summary>
    public static string Text(ParameterWindow window)
    {
        ArgumentNullException.ThrowIfNull(window);
        var control = window.ControlledBy is { Length: > 0 } by ? $"; {by}" : "";
        return FormattableString.Invariant(
            $"{window.SetPoint} {window.Unit} ({window.Lower} to {window.Upper}){Warning(window)}{Phases(window)}{control}"
        );
    }

    private static string Warning(ParameterWindow window) =>
        (window.WarningLower, window.WarningUpper) switch
        {
            ({ } low, { } high) => FormattableString.Invariant($"; warns outside {low} to {high}"),
            ({ } low, null) => FormattableString.Invariant($"; warns below {low}"),
            (null, { } high) => FormattableString.Invariant($"; warns above {high}"),
            _ => "",
        };

    private static string Phases(ParameterWindow window) =>
        window.OtherPhases is { Count: > 0 } phases ? $"; {PhaseLimits.Text(phases)}" : "";

    private static void AddMaterial(
        LineList lines,
        ProcedureContent content,
        ProcedureDetails details
    )
    {
        const ProcedureGroup group = ProcedureGroup.ParentMaterial;
        lines.Add(group, "Parent material", $"{content.Alloy}-{content.Temper}", true);
        lines.Add(group, "Thickness", LineList.Millimetres(content.Thickness), true);
        if (details.Other is { } other)
        {
            lines.Add(group, "Parent material, other side", $"{other.Alloy}-{other.Temper}", true);
            lines.Add(group, "Thickness, other side", LineList.Millimetres(other.Thickness), true);
        }

        lines.Add(group, "Outer diameter", LineList.Millimetres(details.OuterDiameter), true);
        lines.AddWords(group);
    }

    private static void AddJoint(LineList lines, ProcedureContent content, ProcedureDetails details)
    {
        const ProcedureGroup group = ProcedureGroup.Joint;
        lines.Add(group, "Joint type", content.JointType, true);
        lines.Add(
            group,
            "Penetration",
            details.Penetration is { } penetration ? DetailWords.Of(penetration) : null,
            true
        );
        lines.Add(group, "Largest gap", details.LargestGap?.ToString(), false);
        lines.Add(group, "Largest mismatch", details.LargestMismatch?.ToString(), false);
        lines.AddWords(group);
        lines.Add(
            group,
            "Sketch",
            details.Sketch is { } s ? $"file {s.Sha256[..12]}" : null,
            false
        );
    }

    private static void AddEquipment(
        LineList lines,
        ProcedureContent content,
        ProcedureObjects? behind
    )
    {
        var details = content.DetailsOrNone;
        lines.Add(ProcedureGroup.Equipment, "Machine", details.Machine?.Label, false);
        AddNameplate(lines, behind?.Machine?.Nameplate);
        lines.Add(ProcedureGroup.Equipment, "Control mode", details.ControlMode, true);
        lines.AddWords(ProcedureGroup.Equipment);
        lines.Add(
            ProcedureGroup.Equipment,
            "Instruments in calibration",
            string.Join(", ", details.Instruments.Select(i => i.Label)),
            false
        );
        lines.Add(ProcedureGroup.Tool, "Tool design", content.ToolDesignLabel, true);
        AddGeometry(lines, behind?.Tool?.Geometry);
        lines.Add(
            ProcedureGroup.Tool,
            "Type of tool",
            details.ToolType is { } type ? Certification.CertificateWords.Of(type) : null,
            true
        );
        lines.Add(
            ProcedureGroup.Tool,
            "Spindle sense, seen from the shoulder side",
            Welding.WeldRun.SenseWord(content.SpindleSense),
            true
        );
        lines.AddWords(ProcedureGroup.Tool);
    }

    private static void AddNameplate(LineList lines, MachineNameplate? plate)
    {
        lines.Add(ProcedureGroup.Equipment, "Maker of the machine", plate?.Maker, false);
        lines.Add(ProcedureGroup.Equipment, "Model of the machine", plate?.Model, false);
        lines.Add(
            ProcedureGroup.Equipment,
            "Serial number of the machine",
            plate?.SerialNumber,
            false
        );
    }

    private static void AddGeometry(LineList lines, ToolGeometry? tool)
    {
        const ProcedureGroup group = ProcedureGroup.Tool;
        lines.Add(group, "Shoulder diameter", LineList.Millimetres(tool?.ShoulderDiameter), true);
        lines.Add(group, "Pin diameter", LineList.Millimetres(tool?.PinDiameter), true);
        lines.Add(group, "Pin length", LineList.Millimetres(tool?.PinLength), true);
        lines.Add(group, "Material of pin and shoulder", tool?.Material, true);
        lines.Add(
            group,
            "Service life limit",
            tool is null
                ? null
                : FormattableString.Invariant($"{tool.LifeLimit.Metres:0.###} m of weld"),
            false
        );
    }
}
