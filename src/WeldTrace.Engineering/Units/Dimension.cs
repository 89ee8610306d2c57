namespace WeldTrace.Engineering.Units;

/// <summary>Kind of a quantity; only units of one kind convert into each other.</summary>
public enum Dimension
{
    /// <summary>A plain number or ratio.</summary>
    Number,

    /// <summary>Time.</summary>
    Time,

    /// <summary>Length.</summary>
    Length,

    /// <summary>Area.</summary>
    Area,

    /// <summary>Volume.</summary>
    Volume,

    /// <summary>Mass.</summary>
    Mass,

    /// <summary>Force.</summary>
    Force,

    /// <summary>Pressure or stress.</summary>
    Pressure,

    /// <summary>Thermodynamic temperature, with the offset of its scale.</summary>
    Temperature,

    /// <summary>Difference of two temperatures; takes no offset.</summary>
    TemperatureDifference,

    /// <summary>Torque.</summary>
    Torque,

    /// <summary>Energy.</summary>
    Energy,

    /// <summary>Power.</summary>
    Power,

    /// <summary>Speed, feed.</summary>
    Speed,

    /// <summary>Rotation speed.</summary>
    RotationSpeed,

    /// <summary>Plane angle.</summary>
    Angle,

    /// <summary>Travel per revolution.</summary>
    WeldPitch,

    /// <summary>Energy per length of weld.</summary>
    LineEnergy,

    /// <summary>Mass density.</summary>
    Density,

    /// <summary>Thermal conductivity.</summary>
    ThermalConductivity,

    /// <summary>Stress intensity.</summary>
    StressIntensity,

    /// <summary>Gas throughput at the temperature of the gas.</summary>
    LeakRate,
}
