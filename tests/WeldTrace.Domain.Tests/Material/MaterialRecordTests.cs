using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Material;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Material;

public sealed class MaterialRecordTests
{
    [Fact]
    public void RecordResults_BeforeTheDocumentOrNothing_TellsBoth()
    {
        var refusals = SampleMaterial
            .Bare()
            .RecordResults(
                new MaterialValues(null, null, null, null),
                null,
                SamplePeople.Inspector,
                SampleTime.Start
            )
            .Refusals;

        Assert.Equal(["document", "values"], refusals.Select(r => r.Code));
    }

    [Fact]
    public void RecordResults_ProofAboveUltimate_Refused()
    {
        var lot = SampleMaterial.Lot();

        Assert.Equal(
            "order",
            Assert
                .Single(
                    lot.RecordResults(
                        SampleMaterial.Values("268", "295", "15"),
                        null,
                        SamplePeople.Inspector,
                        SampleTime.Start
                    ).Refusals
                )
                .Code
        );
    }

    [Fact]
    public void RecordResults_MaterialNotInTheTable_IsKeptWithoutVerdict()
    {
        var lot = SampleMaterial.Bare("ML-2", "2219", "T87");
        Accept.All(
            lot.FileDocument(
                InspectionDocumentType.Type31,
                "own",
                null,
                SamplePeople.Inspector,
                SampleTime.Start
            ),
            lot.RecordResults(
                SampleMaterial.Values("440", null, null),
                SampleMaterial.Minima(),
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );

        Assert.Null(lot.Results!.Minima);
        Assert.False(lot.Results.Misses);
        Assert.All(lot.Results.Lines, l => Assert.Null(l.Verdict));
    }

    [Fact]
    public void FileDocument_WithoutANewScan_KeepsTheOldOne()
    {
        var lot = SampleMaterial.Lot();

        Accept.All(
            lot.FileDocument(
                InspectionDocumentType.Type32,
                "ASTM B241",
                null,
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );

        Assert.Equal(SamplePapers.CertificateSha256, lot.Document!.FileSha256);
    }

    [Fact]
    public void FileDocument_Operator_Refused() =>
        Assert.Equal(
            "role",
            Assert
                .Single(
                    SampleMaterial
                        .Bare()
                        .FileDocument(
                            InspectionDocumentType.Type31,
                            "EN 755-2",
                            null,
                            SamplePeople.Operator,
                            SampleTime.Start
                        )
                        .Refusals
                )
                .Code
        );

    [Fact]
    public void BuildInto_ASecondVesselOrAfterScrapping_Refused()
    {
        var (lot, design) = (SampleMaterial.Lot(), SampleDesigns.Released());
        var component = SampleMaterial.Component(lot);
        var scrapped = SampleMaterial.Component(lot, "S-0002");
        Accept.All(
            component.BuildInto(
                SampleVessels.Planned(design, lot),
                SamplePeople.Engineer,
                SampleTime.Start
            ),
            scrapped.Scrap("Dented.", SamplePeople.Operator, SampleTime.Start)
        );
        var second = SampleVessels.Planned(design, lot, "NR4-0002");

        var again = component.BuildInto(second, SamplePeople.Engineer, SampleTime.Start);
        var dented = scrapped.BuildInto(second, SamplePeople.Engineer, SampleTime.Start);

        Assert.Contains(
            "NR4-0001",
            Assert.Single(again.Refusals).Sentence,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Dented",
            Assert.Single(dented.Refusals).Sentence,
            StringComparison.Ordinal
        );
        Assert.Equal("NR4-0001", component.VesselSerial);
        Assert.Equal(
            "component",
            Assert
                .Single(component.Scrap("x", SamplePeople.Operator, SampleTime.Start).Refusals)
                .Code
        );
    }

    [Fact]
    public void Enter_ComponentMadeTomorrowWithoutWords_TellsAll()
    {
        var refusals = CutComponent
            .Enter(
                "",
                "shell",
                SampleMaterial.Lot(),
                " ",
                SampleTime.Day.AddDays(1),
                SampleTime.Day,
                SamplePeople.Operator,
                SampleTime.Start
            )
            .Refusals;

        Assert.Equal(["missing", "missing", "future"], refusals.Select(r => r.Code));
    }

    /// <summary>Asked for: 170 to 180 °C for 160 to 200 min.</summary>
    [Theory]
    [InlineData("170", "180", "160", true)]
    [InlineData("171", "178", "200", true)]
    [InlineData("169", "178", "180", false)]
    [InlineData("171", "181", "180", false)]
    [InlineData("171", "178", "159", false)]
    [InlineData("171", "178", "201", false)]
    public void Enter_HeatTreatment_SaysWhetherTheCycleWasKept(
        string lowest,
        string highest,
        string minutes,
        bool isKept
    )
    {
        var part = new TreatedPart(Guid.CreateVersion7(SampleTime.Start), "S-0001", false);

        var treatment = Accept.Value(
            SampleHeat.Enter("F-1", SampleHeat.Kept(lowest, highest, minutes), [part, part])
        );

        Assert.Equal(isKept, treatment.IsKept);
        Assert.Equal(isKept, treatment.Verdict == "The cycle was kept.");
        Assert.Single(treatment.Parts);
    }

    [Fact]
    public void Enter_HeatTreatmentWithoutChartOrParts_TellsBoth()
    {
        var refusals = SampleHeat
            .Enter("F-1", SampleHeat.Kept("171", "178", "180"), [], null)
            .Refusals;

        Assert.Equal(["file", "parts"], refusals.Select(r => r.Code));
    }

    /// <summary>A row for a thickness range fits from its lower to below its upper end; a lot without thickness only fits open rows.</summary>
    [Theory]
    [InlineData(null, null)]
    [InlineData(5.9, null)]
    [InlineData(6.0, "260")]
    [InlineData(11.9, "260")]
    [InlineData(12.0, null)]
    public void Find_ByThickness_TakesTheRow(double? millimetres, string? expected)
    {
        var table = Accept.Value(
            LimitTable.Enter(
                "MIN-1",
                LimitKind.MaterialMinima,
                new LimitText(
                    "Minima",
                    new LimitSource("EN 755-2", "2016", "table 30"),
                    [
                        ["6061", "T6", "extruded tube", "6", "12", "260", "", ""],
                    ]
                ),
                SamplePeople.QualityManager,
                SampleTime.Start
            )
        );

        var found = MaterialMinima.Find(
            table,
            "6061",
            "T6",
            "extruded tube",
            millimetres is { } mm ? Engineering.Quantities.Length.FromMillimetres(mm) : null
        );

        Assert.Equal(expected, found?.TensileStrength);
        Assert.Null(found?.Elongation);
    }
}
