using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;

namespace WeldTrace.TestSupport.Records;

public static class SampleInstruments
{
    /// <summary>An instrument 0 to 200 of its unit, calibrated on the day of <see cref="SampleTime.Start"/>, due after a year.</summary>
    public static Instrument Calibrated(string mark, InstrumentKind kind, string unit)
    {
        var today = DateOnly.FromDateTime(SampleTime.Start.Date);
        var instrument = Accept.Value(
            Instrument.Enter(
                new InstrumentText(
                    mark,
                    kind,
                    "type 4, serial 77",
                    new Measured("0", unit),
                    new Measured("200", unit),
                    new Measured("0.01", unit),
                    new Measured("0.5", unit),
                    12,
                    false
                ),
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );
        Accept.All(
            instrument.Calibrate(
                today,
                "Calibration laboratory",
                "C-1",
                null,
                new Measured("0.1", unit),
                today,
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );
        return instrument;
    }
}
