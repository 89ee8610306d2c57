namespace WeldTrace.Domain.Procedures;

/// <summary>The trade's words for groups and fields of a procedure.</summary>
public static class ProcedureFields
{
    private static readonly (ProcedureField Field, ProcedureGroup Group, string Name)[] Known =
    [
        (ProcedureField.Standard, ProcedureGroup.Identity, "Standard and edition"),
        (ProcedureField.AcceptanceLevel, ProcedureGroup.Identity, "Acceptance level"),
        (ProcedureField.Specification, ProcedureGroup.ParentMaterial, "Material specification"),
        (ProcedureField.ProductForm, ProcedureGroup.ParentMaterial, "Product form"),
        (
            ProcedureField.OtherSpecification,
            ProcedureGroup.ParentMaterial,
            "Material specification, other side"
        ),
        (
            ProcedureField.OtherProductForm,
            ProcedureGroup.ParentMaterial,
            "Product form, other side"
        ),
        (ProcedureField.ControllerVersion, ProcedureGroup.Equipment, "Controller version"),
        (ProcedureField.Stiffness, ProcedureGroup.Equipment, "Stiffness of the machine"),
        (ProcedureField.Fixture, ProcedureGroup.Equipment, "Fixture"),
        (ProcedureField.ToolHardness, ProcedureGroup.Tool, "Hardness of pin and shoulder"),
        (ProcedureField.ToolCoating, ProcedureGroup.Tool, "Coating"),
        (ProcedureField.ClampType, ProcedureGroup.Clamping, "Clamps"),
        (ProcedureField.ClampPosition, ProcedureGroup.Clamping, "Position of the clamps"),
        (ProcedureField.ClampForce, ProcedureGroup.Clamping, "Clamping force"),
        (ProcedureField.BackingMaterial, ProcedureGroup.Clamping, "Backing material"),
        (ProcedureField.BackingSize, ProcedureGroup.Clamping, "Backing size"),
        (ProcedureField.EdgePreparation, ProcedureGroup.Joint, "Edge preparation"),
        (ProcedureField.Tabs, ProcedureGroup.Joint, "Run-on and run-off tabs"),
        (ProcedureField.TackWelds, ProcedureGroup.Joint, "Tack welds"),
        (ProcedureField.WeldingPosition, ProcedureGroup.Joint, "Welding position"),
        (ProcedureField.WeldSequence, ProcedureGroup.Joint, "Weld sequence"),
        (ProcedureField.StartPlace, ProcedureGroup.Joint, "Place of the start"),
        (ProcedureField.OverlapPlace, ProcedureGroup.Joint, "Weld overlap"),
        (ProcedureField.ExitPlace, ProcedureGroup.Joint, "Place of the exit hole"),
        (ProcedureField.CleaningBefore, ProcedureGroup.Cleaning, "Cleaning before welding"),
        (ProcedureField.CleaningBetween, ProcedureGroup.Cleaning, "Cleaning between passes"),
        (ProcedureField.Preheat, ProcedureGroup.Thermal, "Preheat"),
        (ProcedureField.Interpass, ProcedureGroup.Thermal, "Interpass temperature"),
        (ProcedureField.PostHeat, ProcedureGroup.Thermal, "Post-heat"),
        (ProcedureField.Cooling, ProcedureGroup.Thermal, "Cooling"),
        (ProcedureField.HeatTreatment, ProcedureGroup.Thermal, "Post-weld heat treatment"),
        (ProcedureField.FlashRemoval, ProcedureGroup.AfterWelding, "Flash removal"),
        (ProcedureField.Finishing, ProcedureGroup.AfterWelding, "Finishing"),
        (ProcedureField.ExitHoleClosing, ProcedureGroup.AfterWelding, "Exit hole"),
        (ProcedureField.Straightening, ProcedureGroup.AfterWelding, "Straightening"),
        (ProcedureField.SetUp, ProcedureGroup.Equipment, "Set-up"),
    ];

    /// <summary>All fields of a group, in the order of the sheet.</summary>
    public static IReadOnlyList<ProcedureField> In(ProcedureGroup group) =>
        [.. Known.Where(k => k.Group == group).Select(k => k.Field)];

    /// <summary>The name of a field, as printed at the start of a line.</summary>
    /// <exception cref="InvalidOperationException">The field has no entry here.</exception>
    public static string Name(ProcedureField field) => Known.First(k => k.Field == field).Name;

    /// <summary>The heading of a group.</summary>
    public static string Heading(ProcedureGroup group) =>
        group switch
        {
            ProcedureGroup.Identity => "Identity",
            ProcedureGroup.ParentMaterial => "Parent material",
            ProcedureGroup.Joint => "Joint",
            ProcedureGroup.Cleaning => "Cleaning",
            ProcedureGroup.Equipment => "Equipment",
            ProcedureGroup.Tool => "Tool",
            ProcedureGroup.Clamping => "Clamping and backing",
            ProcedureGroup.Parameters => "Parameters",
            ProcedureGroup.Thermal => "Thermal",
            ProcedureGroup.AfterWelding => "After welding",
            _ => throw new ArgumentOutOfRangeException(nameof(group), group, "Unknown group."),
        };
}
