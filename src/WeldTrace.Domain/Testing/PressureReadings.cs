using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Conformity;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Testing;

/// <summary>How a pressure test is set up.</summary>
/// <param name="Gauge">Mark of the gauge that gives the acceptance values; put in from the register.</param>
/// <param name="GaugeUncertainty">Its standard uncertainty, in bar.</param>
/// <param name="Thermometer">Mark of the thermometer; put in from the register.</param>
/// <param name="TemperatureUncertainty">Its standard uncertainty, in K.</param>
/// <param name="AtmosphericPressure">Barometer in mbar.</param>
/// <param name="DimensionName">Dimension or strain measured before and after, for instance the outer diameter at mid-length.</param>
/// <param name="DimensionBefore">Its value before the test, in mm, or in <see cref="StrainUnit"/> for a strain.</param>
/// <param name="DimensionUncertainty">Its standard uncertainty, in the same unit.</param>
/// <param name="CautionsRead">Whether the inspector confirmed the cautions about stored energy and stand-off.</param>
public sealed record PressureSetUp(
    string Gauge,
    Measured GaugeUncertainty,
    string Thermometer,
    Measured TemperatureUncertainty,
    Measured AtmosphericPressure,
    string DimensionName,
    Measured DimensionBefore,
    Measured DimensionUncertainty,
    bool CautionsRead
)
{
    /// <summary>Most places that are measured before and after.</summary>
    public const int MostPlaces = 4;

    /// <summary>Unit of a strain.</summary>
    public const string StrainUnit = "µm/m";

    /// <summary>Whether a strain is read in the place of a dimension.</summary>
    public bool IsStrain => DimensionBefore.Unit == StrainUnit;

    /// <summary>Length that the strain stands for, in mm, the diameter for a gauge round the shell; null for a dimension.</summary>
    public Measured? StrainLength { get; init; }

    /// <summary>Further places, measured with the same instrument in the same unit; null when there is only the one.</summary>
    public IReadOnlyList<MeasuredPlace>? FurtherPlaces { get; init; }

    /// <summary>Every place that is measured before and after, the first one first.</summary>
    public IReadOnlyList<MeasuredPlace> Places() =>
        [new(DimensionName, DimensionBefore, StrainLength), .. FurtherPlaces ?? []];

    /// <summary>True for a destructive sample that goes on to burst; null otherwise.</summary>
    public bool? ToBurst { get; init; }

    /// <summary>Who read the figures about stored energy; null in tests begun before they were kept.</summary>
    public HazardAcknowledgement? Acknowledgement { get; init; }
}

/// <summary>The file of a logger from which readings were taken; its bytes are kept under their hash.</summary>
/// <param name="Sha256">SHA-256 of the file, hexadecimal.</param>
/// <param name="FileName">Name of the file as it was brought.</param>
/// <param name="Samples">Samples in it.</param>
/// <param name="Seconds">Time from its first to its last sample.</param>
public sealed record LoggerFile(string Sha256, string FileName, int Samples, double Seconds);

/// <summary>What was read at a stage. A hold has both pressures; the return to zero has the dimension.</summary>
/// <param name="StartPressure">Gauge pressure when the hold began, in bar.</param>
/// <param name="StartTemperature">Temperature of the medium then, in °C.</param>
/// <param name="EndPressure">Gauge pressure when the hold ended, in bar.</param>
/// <param name="EndTemperature">Temperature of the medium then, in °C.</param>
/// <param name="HeldSeconds">Time between the two.</param>
/// <param name="Dimension">Dimension after the return to zero, in mm; the strain, in µm/m, where that is read.</param>
public sealed record StageReading(
    Measured? StartPressure,
    Measured? StartTemperature,
    Measured? EndPressure,
    Measured? EndTemperature,
    int HeldSeconds,
    Measured? Dimension
)
{
    /// <summary>Greatest rise within one minute on the way to the stage, in bar; null when it wasn't read.</summary>
    public Measured? FastestRise { get; init; }

    /// <summary>Highest gauge pressure up to the end of the hold, in bar; null when only both ends were read.</summary>
    public Measured? HighestPressure { get; init; }

    /// <summary>Total volumetric expansion at the highest pressure before the return to zero, in cm³.</summary>
    public Measured? TotalExpansion { get; init; }

    /// <summary>Expansion that stayed at zero, in cm³.</summary>
    public Measured? PermanentExpansion { get; init; }

    /// <summary>Standard uncertainty of one expansion, in cm³.</summary>
    public Measured? ExpansionUncertainty { get; init; }

    /// <summary>The same at each of <see cref="PressureSetUp.FurtherPlaces"/>; null when there is none.</summary>
    public IReadOnlyList<Measured>? FurtherDimensions { get; init; }

    /// <summary>What was measured at zero again, in the order of <see cref="PressureSetUp.Places"/>; empty at any other stage.</summary>
    public IReadOnlyList<Measured> Dimensions() =>
        Dimension is null ? [] : [Dimension, .. FurtherDimensions ?? []];

    /// <summary>Logger file that the readings come from; null when they were read by eye.</summary>
    public LoggerFile? Log { get; init; }

    /// <summary>How the vessel burst; null at any other stage.</summary>
    public BurstReading? Burst { get; init; }
}

/// <summary>A stage with its readings and the computed verdict.</summary>
/// <param name="Stage">Stage of the ladder.</param>
/// <param name="Reading">What was read.</param>
/// <param name="Verdict">Verdict.</param>
/// <param name="Sentence">The verdict in a sentence.</param>
/// <param name="At">UTC instant of the entry.</param>
/// <param name="By">Printed name of whoever entered it.</param>
public sealed record StageResult(
    PressureStage Stage,
    StageReading Reading,
    Verdict Verdict,
    string Sentence,
    DateTimeOffset At,
    string By
);
