using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Tools;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Documents.Tests.Samples;

internal static class SampleTool
{
    private const double MetresPerRun = 0.448;
    private const int Runs = 60;

    public static ToolCardModel Model() =>
        new()
        {
            Stamp = SampleTraveler.Stamp,
            RecordAddress = "https://weldtrace.caboraso.example/tools/T-101",
            Serial = "T-101",
            State = new StateMark("in service", MarkShape.Disc),
            Design = "TD-6, scroll shoulder, threaded pin",
            Particulars =
            [
                new("Shoulder", "Ø 18.0 mm, one scroll"),
                new("Pin", "Ø 6.0 mm × 4.7 mm, M6 left-hand"),
                new("Material", "hot-work steel, 52 HRC"),
                new("In service since", "2031-04-02"),
            ],
            Life = new ToolLife(Length.FromMetres(MetresPerRun * Runs), Length.FromMetres(40))
            {
                InspectionDueAt = Length.FromMetres(30),
            },
            LifeFigures =
            [
                new("Passes left on this design", "29 (0.448 m each)"),
                new("Pin wear trend", "0.9 µm/m"),
                new("Survives the next pass", "0.998 (95 % lower bound 0.97)"),
                new("Inspection interval", "10 m"),
            ],
            Uses = [.. Enumerable.Range(1, Runs).Select(Use)],
            Inspections =
            [
                Inspection(4, 10.0, "5.99 mm", "4.69 mm"),
                Inspection(11, 20.2, "5.98 mm", "4.69 mm"),
            ],
        };

    /// <summary>4.70 mm drawn, 4.60 mm least; 4.70, 4.69, 4.68 mm after 0, 10 and 20 m: 1 µm per metre.</summary>
    public static XyPlot Wear(UnitSystem units)
    {
        WearReadingLine[] readings = [Reading(0, 4.70), Reading(10, 4.69), Reading(20, 4.68)];
        var drawn = Length.FromMillimetres(4.70);
        var trend = WearTrend.Fit(
            [.. readings.Select(r => new WearReading(r.AtUse, drawn - r.PinLength))],
            Length.FromMillimetres(0.1)
        );
        return WearPlot.Of(
            readings,
            drawn,
            Length.FromMillimetres(4.60),
            Length.FromMetres(40),
            trend.Value,
            units
        );
    }

    /// <summary>Failed after 20, 30 and 40 m; one still in use after 10 m.</summary>
    public static XyPlot Failures(UnitSystem units)
    {
        LifeRecord[] records =
        [
            new(Length.FromMetres(20), true),
            new(Length.FromMetres(30), true),
            new(Length.FromMetres(40), true),
            new(Length.FromMetres(10), false),
        ];
        return WeibullPlot.Of(
            records,
            ToolLifeFit.Fit(records).Value,
            Length.FromMetres(10),
            units
        );
    }

    private static WearReadingLine Reading(double metres, double millimetres) =>
        new(Length.FromMetres(metres), Length.FromMillimetres(millimetres), true);

    private static ToolUseLine Use(int run) =>
        new(
            SampleTraveler.At(2, 8, 0).AddHours(run * 5),
            $"WR-{820 + run:0000}",
            Length.FromMetres(MetresPerRun)
        )
        {
            Vessel = $"NR-{390 + (run / 4):0000}",
            Joint = run % 4 < 2 ? "J1" : "J2",
            Pass = run % 2 == 0 ? "1" : "2",
            TotalAfter = Length.FromMetres(MetresPerRun * run),
            Superseded =
                run == 7
                    ? new Correction(
                        "Run was welded with T-102",
                        "Tomé Arriaga",
                        SampleTraveler.At(3, 20, 0),
                        null
                    )
                    : null,
        };

    private static ToolInspectionLine Inspection(
        int day,
        double metres,
        string pin,
        string length
    ) =>
        new(SampleTraveler.At(day, 7, 40), "Inês Falcão", SampleTraveler.Passed)
        {
            AtUse = Length.FromMetres(metres),
            Measured = [new("Pin diameter", pin), new("Pin length", length)],
            Remark = "thread sharp, no crack seen at 10×",
        };
}
