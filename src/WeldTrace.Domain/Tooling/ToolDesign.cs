using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Tooling;

/// <summary>Drawing of a tool: shoulder, pin and the length of weld that one tool of it may make.</summary>
/// <param name="ShoulderDiameter">Diameter of the shoulder; above the pin's.</param>
/// <param name="PinDiameter">Diameter of the pin at its root; above zero.</param>
/// <param name="PinLength">Length of the pin; above zero.</param>
/// <param name="Material">Tool material, as on the drawing.</param>
/// <param name="LifeLimit">Length of weld after which a tool is withdrawn; above zero. Shown by recorded evidence.</param>
/// <param name="LifeEvidence">Where that evidence is.</param>
/// <param name="HasSeparateParts">Whether pin and shoulder are separate parts with marks of their own; the life limit is the pin's then. Null means no.</param>
/// <param name="ShoulderLifeLimit">Length of weld after which a separate shoulder is withdrawn; above zero; null when it outlasts every pin.</param>
public sealed record ToolGeometry(
    Length ShoulderDiameter,
    Length PinDiameter,
    Length PinLength,
    string Material,
    Length LifeLimit,
    string LifeEvidence,
    bool? HasSeparateParts = null,
    Length? ShoulderLifeLimit = null
);

/// <summary>One revision of a tool drawing.</summary>
public sealed class ToolDesign : Record
{
    /// <summary>Longest drawing number or word.</summary>
    public const int LongestText = 80;

    private ToolDesign(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "tool-design";

    /// <inheritdoc/>
    public override string Label => $"{Number} rev {Revision}";

    /// <summary>Drawing number.</summary>
    public string Number { get; private set; } = "";

    /// <summary>Revision counted from 1.</summary>
    public int RevisionIndex { get; private set; }

    /// <summary>Revision letters.</summary>
    public string Revision => RevisionLetters.Of(RevisionIndex);

    /// <summary>Dimensions, material and life.</summary>
    public ToolGeometry Geometry { get; private set; } = null!;

    /// <summary>Wear limits and inspections; null until they are laid down.</summary>
    public ToolUpkeep? Upkeep { get; private set; }

    /// <summary>SHA-256 of the file that shows the life; null until it is handed in.</summary>
    public string? LifeEvidenceSha256 { get; private set; }

    /// <summary>Enters a drawing revision.</summary>
    public static Outcome<ToolDesign> Enter(
        string number,
        int revisionIndex,
        ToolGeometry geometry,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(geometry);
        var checks = new Checks()
            .Role(actor, Role.Engineer)
            .Text(number, LongestText, "Give the drawing number", nameof(Number))
            .That(
                revisionIndex >= 1,
                "revision",
                "Give the revision, from A.",
                nameof(RevisionIndex)
            );
        CheckGeometry(checks, geometry);
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var design = new ToolDesign(Guid.CreateVersion7(at))
        {
            Number = number.Trim(),
            RevisionIndex = revisionIndex,
            Geometry = geometry,
        };
        design.Note(actor, at, "tool design entered");
        return design;
    }

    /// <summary>Lays down wear limits and inspections; a later act takes the place of the earlier one.</summary>
    public Outcome LayDownUpkeep(ToolUpkeep upkeep, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(upkeep);
        var checks = new Checks().Role(actor, Role.Engineer).Add(upkeep.Check(Geometry));
        if (checks.AllHold)
        {
            Upkeep = upkeep with { InspectionProcedure = upkeep.InspectionProcedure.Trim() };
            Note(actor, at, "wear limits and inspections laid down");
        }

        return checks.ToOutcome();
    }

    /// <summary>Files the evidence for the life.</summary>
    public Outcome FileLifeEvidence(string? sha256, Actor actor, DateTimeOffset at)
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .That(sha256 is not null, "file", "Choose the file that shows the life.", "File");
        if (checks.AllHold)
        {
            LifeEvidenceSha256 = sha256;
            Note(actor, at, "evidence of the life filed");
        }

        return checks.ToOutcome();
    }

    private static void CheckGeometry(Checks checks, ToolGeometry geometry) =>
        checks
            .Text(
                geometry.Material,
                LongestText,
                "Give the tool material",
                nameof(ToolGeometry.Material)
            )
            .Text(
                geometry.LifeEvidence,
                LongestText,
                "Say where the evidence for the life is kept",
                nameof(ToolGeometry.LifeEvidence)
            )
            .That(
                geometry.PinDiameter > Length.Zero,
                "pin",
                "Give the pin's diameter, above zero.",
                nameof(ToolGeometry.PinDiameter)
            )
            .That(
                geometry.PinLength > Length.Zero,
                "pin",
                "Give the pin's length, above zero.",
                nameof(ToolGeometry.PinLength)
            )
            .That(
                geometry.ShoulderDiameter > geometry.PinDiameter,
                "shoulder",
                "The shoulder must be wider than the pin; check both diameters.",
                nameof(ToolGeometry.ShoulderDiameter)
            )
            .That(
                geometry.LifeLimit > Length.Zero,
                "life",
                "Give the life limit, above zero metres.",
                nameof(ToolGeometry.LifeLimit)
            )
            .That(
                geometry.ShoulderLifeLimit is null
                    || (
                        geometry.HasSeparateParts is true
                        && geometry.ShoulderLifeLimit > Length.Zero
                    ),
                "life",
                "A shoulder has a life of its own, above zero metres, only where it is a separate part.",
                nameof(ToolGeometry.ShoulderLifeLimit)
            );
}
