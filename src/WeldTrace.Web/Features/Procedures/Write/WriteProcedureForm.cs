using System.Globalization;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Paths;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Procedures.Write;

/// <summary>A procedure revision as typed.</summary>
public sealed class WriteProcedureForm : IShownVersion
{
    /// <inheritdoc/>
    public int? Version { get; set; }

    public string? Number { get; set; }

    public string? Title { get; set; }

    public string? Alloy { get; set; }

    public string? Temper { get; set; }

    public string? Thickness { get; set; }

    public string? JointType { get; set; }

    public Guid ToolDesignId { get; set; }

    public RotationSense SpindleSense { get; set; }

    public string? DebounceSeconds { get; set; } = "0.5";

    public string? DebounceMillimetres { get; set; }

    public string? Notes { get; set; }

    // A form sent without any of them arrives as null.
    public List<WindowForm> Windows
    {
        get;
        set => field = value ?? [];
    } = [];

    public DetailsForm Details { get; set; } = new();

    /// <summary>One row for each parameter; rows without any number don't count.</summary>
    public void FillRows()
    {
        foreach (
            var parameter in Enum.GetValues<WeldParameter>()
                .Where(p => Windows.All(w => w.Parameter != p))
        )
        {
            Windows.Add(
                new WindowForm { Parameter = parameter, Unit = ParameterUnits.For(parameter)[0] }
            );
        }

        Windows = [.. Windows.OrderBy(w => w.Parameter)];
        Details.FillRows();
    }

    public static WriteProcedureForm Of(ProcedureRevision revision)
    {
        ArgumentNullException.ThrowIfNull(revision);
        var content = revision.Content;
        return new WriteProcedureForm
        {
            Version = revision.Version,
            Number = revision.Number,
            Title = revision.Title,
            Alloy = content.Alloy,
            Temper = content.Temper,
            Thickness = content.Thickness.Millimetres.ToString(
                "0.###",
                CultureInfo.InvariantCulture
            ),
            JointType = content.JointType,
            ToolDesignId = content.ToolDesignId,
            SpindleSense = content.SpindleSense,
            DebounceSeconds = content.DebounceSeconds.ToString(CultureInfo.InvariantCulture),
            DebounceMillimetres = content.DebounceMillimetres?.ToString(
                CultureInfo.InvariantCulture
            ),
            Notes = content.Notes,
            Windows = [.. content.Windows.Select(WindowForm.Of)],
            Details = DetailsForm.Of(content.DetailsOrNone),
        };
    }
}

/// <summary>A window as typed.</summary>
public sealed class WindowForm
{
    public WeldParameter Parameter { get; set; }

    public string? SetPoint { get; set; }

    public string? Lower { get; set; }

    public string? Upper { get; set; }

    public string? Unit { get; set; }

    public bool IsEssential { get; set; }

    public string? ControlledBy { get; set; }

    public string? WarningLower { get; set; }

    public string? WarningUpper { get; set; }

    /// <summary>Limits in other phases, as one text.</summary>
    public string? OtherPhases { get; set; }

    public bool IsEmpty =>
        string.IsNullOrWhiteSpace(SetPoint)
        && string.IsNullOrWhiteSpace(Lower)
        && string.IsNullOrWhiteSpace(Upper);

    /// <summary>The row with missing limits at its set point, as long as it is being typed.</summary>
    public WindowForm Filled() =>
        new()
        {
            Parameter = Parameter,
            SetPoint = SetPoint,
            Lower = string.IsNullOrWhiteSpace(Lower) ? SetPoint : Lower,
            Upper = string.IsNullOrWhiteSpace(Upper) ? SetPoint : Upper,
            Unit = Unit,
        };

    public static WindowForm Of(ParameterWindow window)
    {
        ArgumentNullException.ThrowIfNull(window);
        return new WindowForm
        {
            Parameter = window.Parameter,
            SetPoint = window.SetPoint.ToString(CultureInfo.InvariantCulture),
            Lower = window.Lower.ToString(CultureInfo.InvariantCulture),
            Upper = window.Upper.ToString(CultureInfo.InvariantCulture),
            Unit = window.Unit,
            IsEssential = window.IsEssential,
            ControlledBy = window.ControlledBy,
            WarningLower = window.WarningLower?.ToString(CultureInfo.InvariantCulture),
            WarningUpper = window.WarningUpper?.ToString(CultureInfo.InvariantCulture),
            OtherPhases = PhaseLimits.Text(window.OtherPhases),
        };
    }
}

/// <summary>What the form offers.</summary>
public sealed record WriteProcedureChoices(
    ProcedureRevision? Revision,
    IReadOnlyList<ToolDesign> Tools,
    IReadOnlyList<Machine> Machines,
    IReadOnlyList<Instrument> Instruments
)
{
    /// <summary>Pin last measured of the tool design that the revision names; null when there is none.</summary>
    public MeasuredPin? Pin { get; init; }

    /// <summary>Joints of current drawings that name the procedure.</summary>
    public IReadOnlyList<DrawnJoint> Drawn { get; init; } = [];
}
