using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Documents.Tests.Samples;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;
using WeldTrace.Engineering.Vessels;
using Xunit;

namespace WeldTrace.Documents.Tests.CalculationSheets;

public sealed class CalculationSheetExporterTests
{
    private const string Address = "https://weld.example/desk/vessel?meop=60";

    [Fact]
    public void Write_Calculation_PrintsSiteEntriesWorkingSourceAndCautions()
    {
        var bytes = Bytes(Model(Address));
        SampleFolder.Keep("calculation.pdf", bytes);
        var text = WrittenPdf.Text(bytes);

        Assert.All(
            new[]
            {
                SampleTraveler.Stamp.SiteName,
                "Calculation sheet: Pressure ladder",
                "Highest pressure",
                "60 bar",
                "Proof pressure",
                "proof = PF·ECF·MEOP; burst = BF·ECF·MEOP",
                "environmental correction",
                "120 bar",
                "Source: rule 7, edition 2, clause 3",
                "Gas stores more than liquid.",
                "hold, min",
                "wanted",
                "in mm",
                "7.16",
            },
            words => Assert.Contains(words, text, StringComparison.Ordinal)
        );
        Assert.Contains("weld.example", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_AddressOfAWholeList_IsLeftOut() =>
        Assert.DoesNotContain(
            "weld.example",
            WrittenPdf.Text(Bytes(Model(Address + new string('0', 2000)))),
            StringComparison.Ordinal
        );

    [Fact]
    public void Write_SameModel_GivesTheSameText() =>
        Assert.Equal(
            WrittenPdf.Text(Bytes(Model(Address))),
            WrittenPdf.Text(Bytes(Model(Address)))
        );

    /// <summary>The planned hold lies on the drawn line: half-way across, and the limit falls as 1/t (DecaySensitivity).</summary>
    [Fact]
    public void DetectionPlot_PlannedHold_LiesOnTheLine()
    {
        var plot = Plot();

        var line = plot.Lines.Single(l => !l.IsLimit);
        var point = plot.Points.Single().Place;
        Assert.Equal(0.5, point.Across, 1e-12);
        Assert.Equal((line.From.Up + line.To.Up) / 2, point.Up, 1e-12);
        Assert.True(line.From.Up > line.To.Up);
        Assert.All(plot.Across.Ticks.Concat(plot.Up.Ticks), tick => Assert.InRange(tick.At, 0, 1));
    }

    private static CalculationSheetModel Model(string address) =>
        new(
            SampleTraveler.Stamp,
            address,
            new Calculation
            {
                Title = "Pressure ladder",
                Entered = [new("Highest pressure", "60 bar")],
                Figures = [new("Proof pressure", "90 bar")],
                Statements = ["A burst test decides."],
                Plot = new CalculationPlot("Detection limit", Plot(), "Disc: planned."),
                Tables =
                [
                    new(
                        "Walls",
                        ["Shape", "in mm"],
                        [
                            ["cylinder", "7.16"],
                        ]
                    ),
                ],
                Workings =
                [
                    PressureLadder
                        .Compute(
                            Pressure.FromBar(60),
                            new LadderFactors(1.5, 2, "rule 7, edition 2, clause 3")
                        )
                        .Working,
                ],
                Cautions = ["Gas stores more than liquid."],
            }
        );

    private static WeldTrace.Documents.Drawings.XyPlot Plot()
    {
        var hold = TimeSpan.FromMinutes(60);
        var sensitivity = DecaySensitivity
            .Compute(
                Volume.FromLitres(10),
                Pressure.FromBar(61),
                Temperature.FromDegreesCelsius(20),
                hold,
                new DecayUncertainty(Volume.Zero, Pressure.FromMillibar(2), 0.02, TimeSpan.Zero)
            )
            .Value;
        return DetectionPlot.Of(
            sensitivity,
            hold,
            LeakRate.FromSi(0.01),
            UnitCatalogue.Get("mbar·l/s")
        );
    }

    private static byte[] Bytes(CalculationSheetModel model)
    {
        using var stream = new MemoryStream();
        CalculationSheetExporter.Write(model, stream);
        return stream.ToArray();
    }
}
