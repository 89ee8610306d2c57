using System.Globalization;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.Paths;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Laboratory.Enter;

/// <summary>A specimen as typed.</summary>
public sealed class SpecimenRow
{
    public string? Mark { get; set; }

    public string? Width { get; set; }

    public string? Thickness { get; set; }

    public string? Force { get; set; }

    public string? Place { get; set; }

    public string? Side { get; set; }

    public string? Former { get; set; }

    public string? Angle { get; set; }

    public string? LongestCrack { get; set; }

    public string? Seen { get; set; }

    public bool IsEmpty => string.IsNullOrWhiteSpace(Mark) && string.IsNullOrWhiteSpace(Width);
}

/// <summary>A laboratory test as typed.</summary>
public sealed class EnterLaboratoryForm
{
    private const int RowCount = 4;

    /// <summary>Made when the form was shown, so that sending it twice enters one test.</summary>
    public Guid Id { get; set; }

    public string? VesselSerial { get; set; }

    public string? ProductionLot { get; set; }

    public string? JointCode { get; set; }

    public string? Sample { get; set; }

    public string? Place { get; set; }

    public string? Procedure { get; set; }

    public DateOnly? WeldedOn { get; set; }

    public string? Method { get; set; }

    public string? MethodEdition { get; set; }

    public string? Acceptance { get; set; }

    public string? AcceptanceEdition { get; set; }

    public string? WrittenProcedure { get; set; }

    public DateOnly? TestedOn { get; set; }

    public string? Instrument { get; set; }

    public string? Remark { get; set; }

    /// <summary>Least strength or hardness, or largest former.</summary>
    public string? Required { get; set; }

    public string? RequiredSource { get; set; }

    public string? Parent { get; set; }

    public string? Reference { get; set; }

    public string? ForceUncertainty { get; set; }

    public string? SizeUncertainty { get; set; }

    public string? Crack { get; set; }

    public string? RollerGap { get; set; }

    public string? Scale { get; set; }

    public string? Dwell { get; set; }

    public string? Depth { get; set; }

    public string? Block { get; set; }

    /// <summary>Indentations, one a line: position and hardness.</summary>
    public string? Points { get; set; }

    public List<SpecimenRow> Rows
    {
        get;
        set => field = value ?? [];
    } = [];

    public IFormFile? File { get; set; }

    public string? Password { get; set; }

    public void FillRows()
    {
        while (Rows.Count < RowCount)
        {
            Rows.Add(new());
        }
    }

    public LaboratorySample ReadSample(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new(
            string.IsNullOrWhiteSpace(VesselSerial) ? null : VesselSerial.Trim(),
            ProductionLot?.Trim() ?? "",
            JointCode?.Trim() ?? "",
            Sample?.Trim() ?? "",
            Place?.Trim() ?? "",
            Procedure?.Trim() ?? "",
            entries.Day(WeldedOn, "the day of welding", nameof(WeldedOn))
        );
    }

    public TestHeader ReadHeader(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new(
            Method?.Trim() ?? "",
            MethodEdition?.Trim() ?? "",
            Acceptance?.Trim() ?? "",
            AcceptanceEdition?.Trim() ?? "",
            WrittenProcedure?.Trim() ?? "",
            entries.Day(TestedOn, "the day of the test", nameof(TestedOn)),
            Remark?.Trim() ?? ""
        );
    }

    public LaboratoryEntry Read(TestKind kind, Entries entries, List<Refusal> refusals)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(refusals);
        var read = kind switch
        {
            TestKind.TransverseTensile => new LaboratoryEntry(Tensile: ReadTensile(entries)),
            TestKind.Hardness => new LaboratoryEntry(Hardness: ReadHardness(entries, refusals)),
            _ => new LaboratoryEntry(Bend: ReadBend(entries)),
        };
        if (kind != TestKind.Hardness && string.IsNullOrWhiteSpace(RequiredSource))
        {
            refusals.Add(
                new(
                    "source",
                    "Say where the limit stands: the qualification, standard or design specification with its clause.",
                    nameof(RequiredSource)
                )
            );
        }

        refusals.AddRange(entries.Refusals);
        return read;
    }

    private TensileSeries ReadTensile(Entries entries) =>
        new(
            new(
                Decimal(entries.Number(Required, "MPa", "Least strength", nameof(Required))),
                RequiredSource?.Trim() ?? ""
            ),
            entries.Number(Parent, "MPa", "Strength of the parent", nameof(Parent)),
            entries.Choice<ParentReference>(Reference, "What that strength is", nameof(Reference)),
            entries.Number(
                ForceUncertainty,
                "kN",
                "Uncertainty of the force",
                nameof(ForceUncertainty)
            ),
            entries.Number(
                SizeUncertainty,
                "mm",
                "Uncertainty of the sizes",
                nameof(SizeUncertainty)
            ),
            [.. Filled().Select(r => ReadTensile(entries, r.Row, r.Name))]
        );

    private static TensileRow ReadTensile(Entries entries, SpecimenRow row, string name) =>
        new(
            row.Mark?.Trim() ?? "",
            new(
                entries.Number(row.Width, "mm", "Width", $"{name}.Width"),
                entries.Number(row.Thickness, "mm", "Thickness", $"{name}.Thickness"),
                entries.Number(row.Force, "kN", "Highest force", $"{name}.Force"),
                entries.Choice<FracturePlace>(row.Place, "Where it broke", $"{name}.Place")
            ),
            string.IsNullOrEmpty(row.Side)
                ? null
                : entries.Choice<WeldSide>(row.Side, "Side", $"{name}.Side")
        );

    private BendSeries ReadBend(Entries entries) =>
        new(
            new(
                Decimal(entries.Number(Required, "mm", "Largest former", nameof(Required))),
                RequiredSource?.Trim() ?? "",
                Decimal(entries.Number(Crack, "mm", "Longest crack permitted", nameof(Crack)))
            ),
            entries.Number(RollerGap, "mm", "Distance of the rollers", nameof(RollerGap)),
            [.. Filled().Select(r => ReadBend(entries, r.Row, r.Name))]
        );

    private static BendRow ReadBend(Entries entries, SpecimenRow row, string name) =>
        new(
            row.Mark?.Trim() ?? "",
            entries.Number(row.Width, "mm", "Width", $"{name}.Width"),
            entries.Number(row.Thickness, "mm", "Thickness", $"{name}.Thickness"),
            new(
                entries.Number(row.Former, "mm", "Former", $"{name}.Former"),
                entries.Number(row.Angle, "°", "Angle", $"{name}.Angle"),
                entries.Number(row.LongestCrack, "mm", "Longest crack", $"{name}.LongestCrack")
            ),
            string.IsNullOrWhiteSpace(row.Seen) ? "none" : row.Seen.Trim()
        );

    private HardnessSeries ReadHardness(Entries entries, List<Refusal> refusals) =>
        new(
            Scale?.Trim() ?? "",
            entries.Number(Dwell, "s", "Dwell", nameof(Dwell)),
            entries.Number(Depth, "mm", "Distance of the row from the surface", nameof(Depth)),
            entries.Number(Parent, "HV", "Hardness of the parent", nameof(Parent)),
            entries.OptionalNumber(Required, "HV", "Least hardness", nameof(Required)),
            Block?.Trim() ?? "",
            HardnessLines.Read(Points, refusals)
        );

    private IEnumerable<(SpecimenRow Row, string Name)> Filled() =>
        Rows.Select((row, i) => (row, FormattableString.Invariant($"Rows[{i}]")))
            .Where(r => !r.row.IsEmpty);

    private static decimal Decimal(Measured measured) =>
        decimal.Parse(measured.Digits, CultureInfo.InvariantCulture);
}
