using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;

namespace WeldTrace.TestSupport.Records;

public static class SampleInstruments
{
    /// <summary>An instrument 0 to 200 of its unit, calibrated on the day of <see cref="SampleTime.Start"/>, due after a year.</summary>
    public static Instrument Calibrated(string mark, InstrumentKind kind, string unit) =>
        Enter(Text(mark, kind, unit), SampleTime.Day, "0.1");

    /// <summary>The same before its first calibration, in kN.</summary>
    public static Instrument Uncalibrated(string mark) =>
        Accept.Value(
            Instrument.Enter(
                Text(mark, InstrumentKind.Force, "kN"),
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );

    /// <summary>A caliper, 0 to 150 mm, read to 0.01 mm, permitted error 0.02 mm, calibrated two months before the start for a year.</summary>
    public static Instrument Caliper(string mark = "CAL-7", bool isIndicationOnly = false) =>
        Enter(
            new InstrumentText(
                mark,
                InstrumentKind.Length,
                "caliper, serial 7741",
                new Measured("0", "mm"),
                new Measured("150", "mm"),
                new Measured("0.01", "mm"),
                new Measured("0.02", "mm"),
                12,
                isIndicationOnly
            ),
            SampleTime.Day.AddMonths(-2),
            "0.01"
        );

    /// <summary>A pressure gauge, calibrated some months before the day of <see cref="SampleTime.Start"/>, due a year later.</summary>
    public static Instrument Gauge(
        string mark,
        string upperBar = "20",
        int calibratedMonthsAgo = 0
    ) =>
        Enter(
            Text(mark, InstrumentKind.Pressure, "bar") with
            {
                Upper = new Measured(upperBar, "bar"),
            },
            SampleTime.Day.AddMonths(-calibratedMonthsAgo),
            "0.1"
        );

    private static InstrumentText Text(string mark, InstrumentKind kind, string unit) =>
        new(
            mark,
            kind,
            "type 4, serial 77",
            new Measured("0", unit),
            new Measured("200", unit),
            new Measured("0.01", unit),
            new Measured("0.5", unit),
            12,
            false
        );

    private static Instrument Enter(InstrumentText text, DateOnly calibrated, string error)
    {
        var instrument = Accept.Value(
            Instrument.Enter(text, SamplePeople.Inspector, SampleTime.Start)
        );
        Accept.All(
            instrument.Calibrate(
                calibrated,
                "Calibration laboratory",
                "C-1",
                null,
                new Measured(error, text.Unit),
                SampleTime.Day,
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );
        return instrument;
    }
}
