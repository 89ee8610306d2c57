using WeldTrace.Domain.Qualification;
using WeldTrace.Engineering.Joints;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Qualifications.Enter;

/// <summary>A result as typed.</summary>
public sealed class EnterResultForm
{
    private const int Rows = 4;

    /// <summary>Made when the form was shown, so that sending it twice enters one result.</summary>
    public Guid Id { get; set; }

    public string? Method { get; set; }

    public string? MethodEdition { get; set; }

    public string? Acceptance { get; set; }

    public string? AcceptanceEdition { get; set; }

    public string? WrittenProcedure { get; set; }

    public DateOnly? TestedOn { get; set; }

    public string? Instrument { get; set; }

    public string? Remark { get; set; }

    public string? Width { get; set; }

    public string? Thickness { get; set; }

    public string? Force { get; set; }

    public string? Place { get; set; }

    public string? Former { get; set; }

    public string? Angle { get; set; } = "180";

    public string? LongestCrack { get; set; } = "0";

    public string? Acceptable { get; set; }

    public string? Findings { get; set; }

    public List<ImperfectionRow> Imperfections
    {
        get;
        set => field = value ?? [];
    } = [];

    public string? Value { get; set; }

    public string? Unit { get; set; }

    public string? AtLeast { get; set; }

    public string? AtMost { get; set; }

    public string? Series { get; set; }

    public IFormFile? File { get; set; }

    public string? Password { get; set; }

    public void FillRows()
    {
        while (Imperfections.Count < Rows)
        {
            Imperfections.Add(new ImperfectionRow());
        }
    }

    public TestHeader ReadHeader(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new TestHeader(
            Method?.Trim() ?? "",
            MethodEdition?.Trim() ?? "",
            Acceptance?.Trim() ?? "",
            AcceptanceEdition?.Trim() ?? "",
            WrittenProcedure?.Trim() ?? "",
            entries.Day(TestedOn, "the day of the test", nameof(TestedOn)),
            Remark?.Trim() ?? ""
        );
    }

    public SpecimenEntry Read(TestKind kind, Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return kind switch
        {
            TestKind.TransverseTensile => new SpecimenEntry(
                Tensile: new TensileEntry(
                    entries.Number(Width, "mm", "Width", nameof(Width)),
                    entries.Number(Thickness, "mm", "Thickness", nameof(Thickness)),
                    entries.Number(Force, "kN", "Highest force", nameof(Force)),
                    entries.Choice<FracturePlace>(Place, "Place of the fracture", nameof(Place))
                )
            ),
            TestKind.RootBend or TestKind.FaceBend or TestKind.SideBend => new SpecimenEntry(
                Bend: new BendEntry(
                    entries.Number(Former, "mm", "Former", nameof(Former)),
                    entries.Number(Angle, "°", "Angle", nameof(Angle)),
                    entries.Number(LongestCrack, "mm", "Longest crack", nameof(LongestCrack))
                )
            ),
            TestKind.Hardness or TestKind.Leak => new SpecimenEntry(Value: ReadValue(entries)),
            _ => new SpecimenEntry(Examination: ReadExamination(entries)),
        };
    }

    private ValueEntry ReadValue(Entries entries)
    {
        var unit = Unit?.Trim() ?? "";
        return new ValueEntry(
            entries.Number(Value, unit, "Value", nameof(Value)),
            entries.OptionalNumber(AtLeast, unit, "Least value", nameof(AtLeast)),
            entries.OptionalNumber(AtMost, unit, "Greatest value", nameof(AtMost)),
            Series?.Trim() ?? ""
        );
    }

    private ExaminationEntry ReadExamination(Entries entries) =>
        new(
            entries.Choice<Acceptability>(Acceptable, "Verdict", nameof(Acceptable))
                == Acceptability.Acceptable,
            Findings?.Trim() ?? "",
            [
                .. Imperfections
                    .Select((row, i) => row.IsEmpty ? null : row.Read(entries, i))
                    .OfType<SizedImperfection>(),
            ]
        );
}

/// <summary>The examiner's own verdict.</summary>
public enum Acceptability
{
    /// <summary>Meets the acceptance standard.</summary>
    Acceptable,

    /// <summary>Doesn't.</summary>
    NotAcceptable,
}

/// <summary>An imperfection as typed.</summary>
public sealed class ImperfectionRow
{
    public string? Name { get; set; }

    public string? Size { get; set; }

    public string? DesignLimit { get; set; }

    public bool IsEmpty =>
        string.IsNullOrWhiteSpace(Name)
        && string.IsNullOrWhiteSpace(Size)
        && string.IsNullOrWhiteSpace(DesignLimit);

    public SizedImperfection Read(Entries entries, int row)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var place = FormattableString.Invariant($"Imperfections[{row}]");
        return new SizedImperfection(
            Name?.Trim() ?? "",
            entries.Number(Size, "mm", "Size", $"{place}.{nameof(Size)}"),
            entries.OptionalNumber(
                DesignLimit,
                "mm",
                "Limit of the design",
                $"{place}.{nameof(DesignLimit)}"
            )
        );
    }
}
