using WeldTrace.Engineering.Quantities;

namespace WeldTrace.ProcessLogs;

/// <summary>The units that a log may use, with their usual spellings.</summary>
public static class LogUnits
{
    /// <summary>Unit of a column whose time is written as a date with a time of day; its samples are seconds from the first.</summary>
    public const string TimeStamp = "time stamp";

    private static readonly Dictionary<string, LogUnit> ByKey = [];

    private static readonly List<LogUnit> Known = [];

    static LogUnits()
    {
        Add("s", LogQuantity.Time, 1, "sec", "second", "seconds", "sek");
        Add("ms", LogQuantity.Time, 1e-3, "msec", "millisecond", "milliseconds");
        Add("µs", LogQuantity.Time, 1e-6, "us", "usec");
        Add("min", LogQuantity.Time, 60, "minute", "minutes");
        Add("h", LogQuantity.Time, 3600, "hr", "hour", "hours");
        Add("d", LogQuantity.Time, 86_400, "day", "days");
        Add(TimeStamp, LogQuantity.Time, 1, "timestamp", "datetime", "iso8601");
        Add(
            "rpm",
            LogQuantity.RotationSpeed,
            RotationSpeed.FromRevolutionsPerMinute(1).SiValue,
            "1/min",
            "min-1",
            "min^-1",
            "min⁻¹",
            "rev/min",
            "r/min",
            "u/min"
        );
        Add("1/s", LogQuantity.RotationSpeed, 1, "s-1", "s^-1", "rev/s", "hz");
        Add("rad/s", LogQuantity.RotationSpeed, RotationSpeed.FromRadiansPerSecond(1).SiValue);
        Add(
            "mm/min",
            LogQuantity.Speed,
            Speed.FromMillimetresPerMinute(1).SiValue,
            "mmpm",
            "mmmin"
        );
        Add("mm/s", LogQuantity.Speed, Speed.FromMillimetresPerSecond(1).SiValue);
        Add("cm/min", LogQuantity.Speed, 1e-2 / 60);
        Add("m/min", LogQuantity.Speed, 1.0 / 60);
        Add("m/s", LogQuantity.Speed, 1);
        Add("in/min", LogQuantity.Speed, Speed.FromInchesPerMinute(1).SiValue, "ipm", "inch/min");
        AddForces();
        AddLengths();
        AddPressures();
    }

    /// <summary>Every unit, in the order in which a list should offer them.</summary>
    public static IReadOnlyList<LogUnit> All => Known;

    /// <summary>The units of one quantity.</summary>
    public static IEnumerable<LogUnit> Of(LogQuantity quantity) =>
        Known.Where(unit => unit.Quantity == quantity);

    /// <summary>Finds a unit by any usual spelling; none when it is not known.</summary>
    public static LogUnit? Find(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return ByKey.GetValueOrDefault(Key(text));
    }

    /// <summary>Symbol of the coherent SI unit in which results of a quantity are given.</summary>
    public static string SiUnitOf(LogQuantity quantity) =>
        quantity switch
        {
            LogQuantity.Time => "s",
            LogQuantity.RotationSpeed => RotationSpeed.SiUnit,
            LogQuantity.Speed => Speed.SiUnit,
            LogQuantity.Force => Force.SiUnit,
            LogQuantity.Torque => Torque.SiUnit,
            LogQuantity.Length => Length.SiUnit,
            LogQuantity.Temperature => Temperature.SiUnit,
            LogQuantity.Angle => Angle.SiUnit,
            LogQuantity.Pressure => Pressure.SiUnit,
            _ => "",
        };

    private static void AddForces()
    {
        Add("N", LogQuantity.Force, 1, "newton", "newtons");
        Add("daN", LogQuantity.Force, 10);
        Add("kN", LogQuantity.Force, Force.FromKilonewtons(1).SiValue, "kilonewton");
        Add("lbf", LogQuantity.Force, Force.FromPoundsForce(1).SiValue, "lb", "lbs");
        Add("kgf", LogQuantity.Force, 9.80665, "kp");
        Add("N·m", LogQuantity.Torque, 1, "nm");
        Add("N·cm", LogQuantity.Torque, 1e-2, "ncm");
        Add("N·mm", LogQuantity.Torque, 1e-3, "nmm");
        Add(
            "lbf·ft",
            LogQuantity.Torque,
            Torque.FromFootPoundsForce(1).SiValue,
            "ftlbf",
            "lbft",
            "ftlb",
            "ft-lb",
            "ft-lbf"
        );
        Add(
            "lbf·in",
            LogQuantity.Torque,
            Torque.FromFootPoundsForce(1).SiValue / 12,
            "inlbf",
            "lbin",
            "inlb",
            "in-lb",
            "in-lbf"
        );
    }

    private static void AddLengths()
    {
        Add(
            "mm",
            LogQuantity.Length,
            Length.FromMillimetres(1).SiValue,
            "millimetre",
            "millimeter"
        );
        Add("µm", LogQuantity.Length, Length.FromMicrometres(1).SiValue, "um", "micron");
        Add("cm", LogQuantity.Length, 1e-2);
        Add("m", LogQuantity.Length, 1, "metre", "meter");
        Add("in", LogQuantity.Length, Length.FromInches(1).SiValue, "inch", "inches");
        Add("°C", LogQuantity.Temperature, 1, 273.15, "c", "degc", "celsius");
        Add("K", LogQuantity.Temperature, 1, "kelvin");
        Add(
            "°F",
            LogQuantity.Temperature,
            5.0 / 9,
            273.15 - (32 * 5.0 / 9),
            "f",
            "degf",
            "fahrenheit"
        );
        Add("°", LogQuantity.Angle, Angle.FromDegrees(1).SiValue, "deg", "degree", "degrees");
        Add("rad", LogQuantity.Angle, 1);
        Add("rev", LogQuantity.Angle, 2 * Math.PI, "turn", "turns");
    }

    private static void AddPressures()
    {
        Add("bar", LogQuantity.Pressure, 1e5, "barg", "bar(g)", "bar g");
        Add("mbar", LogQuantity.Pressure, 100, "mbarg", "hpa");
        Add("Pa", LogQuantity.Pressure, 1, "pascal");
        Add("kPa", LogQuantity.Pressure, 1e3, "kpag");
        Add("MPa", LogQuantity.Pressure, 1e6, "mpag");
        Add(
            "psi",
            LogQuantity.Pressure,
            Pressure.FromPoundsPerSquareInch(1).SiValue,
            "psig",
            "lbf/in²",
            "lbf/in2"
        );
    }

    private static void Add(
        string symbol,
        LogQuantity quantity,
        double factor,
        params string[] spellings
    ) => Add(symbol, quantity, factor, 0, spellings);

    private static void Add(
        string symbol,
        LogQuantity quantity,
        double factor,
        double offset,
        params string[] spellings
    )
    {
        var unit = new LogUnit(symbol, quantity, factor, offset);
        Known.Add(unit);
        foreach (var spelling in spellings.Prepend(symbol))
        {
            ByKey.TryAdd(Key(spelling), unit);
        }
    }

    private static string Key(string text)
    {
        var plain = text.Trim().Replace('_', '/').Replace('μ', 'µ').ToLowerInvariant();
        return string.Concat(plain.Where(c => c is not (' ' or '·' or '*' or '.' or '⋅')));
    }
}
