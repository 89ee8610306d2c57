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
/// <param name="DimensionName">Dimension measured before and after, for instance the outer diameter at mid-length.</param>
/// <param name="DimensionBefore">Its value before the test, in mm.</param>
/// <param name="DimensionUncertainty">Its standard uncertainty, in mm.</param>
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
);

/// <summary>What was read at a stage. A hold has both pressures; the return to zero has the dimension.</summary>
/// <param name="StartPressure">Gauge pressure when the hold began, in bar.</param>
/// <param name="StartTemperature">Temperature of the medium then, in °C.</param>
/// <param name="EndPressure">Gauge pressure when the hold ended, in bar.</param>
/// <param name="EndTemperature">Temperature of the medium then, in °C.</param>
/// <param name="HeldSeconds">Time between the two.</param>
/// <param name="Dimension">Dimension after the return to zero, in mm.</param>
public sealed record StageReading(
    Measured? StartPressure,
    Measured? StartTemperature,
    Measured? EndPressure,
    Measured? EndTemperature,
    int HeldSeconds,
    Measured? Dimension
);

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
