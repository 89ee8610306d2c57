namespace WeldTrace.Domain.Procedures;

/// <summary>Fields of a procedure that are written in words (ISO 25239-4 clause 4 from memory; NASA-STD-5006A w/Change 2 where noted).</summary>
public enum ProcedureField
{
    /// <summary>Standard and edition to which it is qualified.</summary>
    Standard,

    /// <summary>Acceptance level of that standard.</summary>
    AcceptanceLevel,

    /// <summary>Material specification of the first side.</summary>
    Specification,

    /// <summary>Product form of the first side.</summary>
    ProductForm,

    /// <summary>Material specification of the other side.</summary>
    OtherSpecification,

    /// <summary>Product form of the other side.</summary>
    OtherProductForm,

    /// <summary>Version of the machine's controller.</summary>
    ControllerVersion,

    /// <summary>Stiffness or compliance of the machine.</summary>
    Stiffness,

    /// <summary>Fixture that is needed for the dimensions (GWR 27).</summary>
    Fixture,

    /// <summary>Hardness of pin and shoulder.</summary>
    ToolHardness,

    /// <summary>Coating of the tool.</summary>
    ToolCoating,

    /// <summary>Type and number of clamps.</summary>
    ClampType,

    /// <summary>Where they hold.</summary>
    ClampPosition,

    /// <summary>With which force.</summary>
    ClampForce,

    /// <summary>Material of the backing (GWR 30 note).</summary>
    BackingMaterial,

    /// <summary>Size of the backing.</summary>
    BackingSize,

    /// <summary>Preparation of the edges (GWR 63).</summary>
    EdgePreparation,

    /// <summary>Run-on and run-off tabs, of the same alloy (GWR 30).</summary>
    Tabs,

    /// <summary>Tack welds (GWR 71).</summary>
    TackWelds,

    /// <summary>Position of welding.</summary>
    WeldingPosition,

    /// <summary>Order of the passes.</summary>
    WeldSequence,

    /// <summary>Where the weld starts.</summary>
    StartPlace,

    /// <summary>Where a closed weld overlaps its start.</summary>
    OverlapPlace,

    /// <summary>Where the exit hole lies.</summary>
    ExitPlace,

    /// <summary>Cleaning before welding (GWR 63).</summary>
    CleaningBefore,

    /// <summary>Cleaning between passes (GWR 63).</summary>
    CleaningBetween,

    /// <summary>Preheat (GWR 67; ISO 25239-5:2020 4.8).</summary>
    Preheat,

    /// <summary>Temperature between passes (GWR 67; ISO 25239-5:2020 4.8).</summary>
    Interpass,

    /// <summary>Post-heat (GWR 67).</summary>
    PostHeat,

    /// <summary>Cooling.</summary>
    Cooling,

    /// <summary>Heat treatment after welding (GWR 109; ISO 25239-5:2020 4.11).</summary>
    HeatTreatment,

    /// <summary>How flash is removed.</summary>
    FlashRemoval,

    /// <summary>Finishing of face and root.</summary>
    Finishing,

    /// <summary>How the exit hole is closed or cut off.</summary>
    ExitHoleClosing,

    /// <summary>Straightening.</summary>
    Straightening,

    /// <summary>Anything else about set-up and equipment that affects the joint (GWR 53).</summary>
    SetUp,
}

/// <summary>A field in words.</summary>
/// <param name="Field">Which.</param>
/// <param name="Text">What is laid down; 1 to 400 characters.</param>
/// <param name="IsEssential">Whether any change asks for requalification.</param>
public sealed record Particular(ProcedureField Field, string Text, bool IsEssential)
{
    /// <summary>Longest text.</summary>
    public const int LongestText = 400;
}
