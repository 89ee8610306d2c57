using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Tooling;

public sealed class ToolInspectionTests
{
    private static readonly ToolDesign Design = SampleTools.Design();

    /// <summary>
    /// Limits 2.85 mm and 4.80 mm, instrument's error 0.02 mm: 2.87 − 0.02 still meets the limit, 2.86 straddles it and is no pass.
    /// </summary>
    [Theory]
    [InlineData("2.95", "4.95", ToolState.InService)]
    [InlineData("2.87", "4.82", ToolState.InService)]
    [InlineData("2.86", "4.95", ToolState.Held)]
    [InlineData("2.80", "4.95", ToolState.Held)]
    [InlineData("2.95", "4.81", ToolState.Held)]
    [InlineData("2.95", "4.70", ToolState.Held)]
    public void Inspect_Wear_HoldsTheToolUnlessBothMeetTheLimits(
        string length,
        string diameter,
        ToolState expected
    )
    {
        var tool = SampleTools.InService(Design);

        Accept.All(Inspect(tool, Wear(length, diameter)));

        Assert.Equal(expected, tool.State);
        var inspection = tool.LatestMeasured!;
        Assert.Equal(expected == ToolState.InService, inspection.IsGood);
        Assert.Equal("CAL-7", inspection.Measured!.InstrumentMark);
        Assert.Equal("WI-30", inspection.ProcedureNumber);
    }

    [Fact]
    public void Latest_AmongTools_IsOfOneThatIsInService()
    {
        var unmeasured = SampleTools.InService(Design, "T-1");
        var good = SampleTools.InService(Design, "T-2");
        var worn = SampleTools.InService(Design, "T-3");
        Accept.All(Inspect(good, Wear("2.95", "4.95")), Inspect(worn, Wear("2.50", "4.95")));

        Assert.Equal(
            new MeasuredPin("T-2", SampleTime.Day, Length.FromMillimetres(2.95)),
            MeasuredPin.Latest([unmeasured, good, worn])
        );
        Assert.Null(MeasuredPin.Latest([unmeasured, worn]));
    }

    [Fact]
    public void PutInService_WornBeyondTheLimit_Refused()
    {
        var tool = SampleTools.InService(Design);
        Accept.All(Inspect(tool, Wear("2.50", "4.95")));

        var refusal = Assert.Single(
            tool.PutInService(SamplePeople.Engineer, SampleTime.Start).Refusals
        );

        Assert.Contains("2.5", refusal.Sentence, StringComparison.Ordinal);
        Assert.Equal(ToolState.Held, tool.State);
    }

    [Fact]
    public void PutInService_WithoutFirstUseCheck_Refused()
    {
        var tool = Accept.Value(Tool.Enter("T-9", Design, SamplePeople.Engineer, SampleTime.Start));

        Assert.Equal(
            "F6",
            Assert.Single(tool.PutInService(SamplePeople.Engineer, SampleTime.Start).Refusals).Code
        );
    }

    [Fact]
    public void Inspect_FirstUseNotGood_DoesNotCount()
    {
        var tool = Accept.Value(Tool.Enter("T-9", Design, SamplePeople.Engineer, SampleTime.Start));

        Accept.All(
            Inspect(
                tool,
                new InspectionEntry(
                    ToolInspectionKind.FirstUse,
                    false,
                    "Burr on the shoulder",
                    null,
                    null
                )
            )
        );

        Assert.False(tool.HasFirstUseCheck);
    }

    [Fact]
    public void Inspect_NotGoodWithoutWords_Refused() =>
        Assert.Equal(
            nameof(InspectionEntry.Remark),
            Assert
                .Single(
                    Inspect(
                        SampleTools.InService(Design),
                        new InspectionEntry(ToolInspectionKind.Cleaned, false, " ", null, null)
                    ).Refusals
                )
                .Field
        );

    [Fact]
    public void Inspect_WearWithoutReading_Refused() =>
        Assert.Equal(
            "reading",
            Assert
                .Single(
                    Inspect(
                        SampleTools.InService(Design),
                        new InspectionEntry(ToolInspectionKind.Wear, true, "", null, null)
                    ).Refusals
                )
                .Code
        );

    [Fact]
    public void Inspect_InstrumentUnknownIndicationOnlyOrOutOfDate_Refused()
    {
        var tool = SampleTools.InService(Design);
        var indication = SampleInstruments.Caliper("CAL-8", isIndicationOnly: true);
        var reading = new PinReading(Of("2.95"), Of("4.95"), null, "CAL-99");

        var unknown = Inspect(tool, new(ToolInspectionKind.Wear, true, "", reading, null));
        var shown = Inspect(
            tool,
            new(ToolInspectionKind.Wear, true, "", reading with { Instrument = indication }, null)
        );
        var late = Inspect(tool, Wear("2.95", "4.95"), SampleTime.Day.AddYears(1));

        Assert.Contains(
            "CAL-99",
            Assert.Single(unknown.Refusals).Sentence,
            StringComparison.Ordinal
        );
        Assert.Equal("F13", Assert.Single(shown.Refusals).Code);
        Assert.Equal("F13", Assert.Single(late.Refusals).Code);
        Assert.Null(tool.LatestMeasured);
    }

    [Fact]
    public void Charge_PastTheLimit_HoldsTheToolAndItCannotBePutBack()
    {
        var tool = SampleTools.InService(Design);

        tool.Charge(Use(40), SamplePeople.Operator);

        Assert.Equal(ToolState.Held, tool.State);
        Assert.StartsWith("Life used up", tool.HeldBecause, StringComparison.Ordinal);
        Assert.Equal(
            "F6",
            Assert.Single(tool.PutInService(SamplePeople.Engineer, SampleTime.Start).Refusals).Code
        );
    }

    [Fact]
    public void Charge_OneMillimetreBelowTheLimit_StaysInService()
    {
        var tool = SampleTools.InService(Design);

        tool.Charge(Use(39.999), SamplePeople.Operator);

        Assert.Equal(ToolState.InService, tool.State);
    }

    [Fact]
    public void TakeOver_EarlierMetres_CountAndAreTakenOnlyOnce()
    {
        var tool = Accept.Value(Tool.Enter("T-9", Design, SamplePeople.Engineer, SampleTime.Start));
        Outcome TakeOver() =>
            tool.TakeOver(
                Length.FromMetres(12.5),
                "Tool book 3, page 40",
                SamplePeople.Engineer,
                SampleTime.Start
            );

        Accept.All(TakeOver());

        Assert.Equal(27.5, tool.Remaining.Metres, 9);
        Assert.Equal("state", Assert.Single(TakeOver().Refusals).Code);
    }

    [Fact]
    public void LayDownUpkeep_LimitsAboveTheDrawing_TellsEach()
    {
        var refusals = Design
            .LayDownUpkeep(
                new ToolUpkeep(Of("3.00"), Of("5.1"), Length.Zero, 0, ""),
                SamplePeople.Engineer,
                SampleTime.Start
            )
            .Refusals;

        Assert.Equal(
            ["wear-limit", "wear-limit", "interval", "interval", "missing"],
            refusals.Select(r => r.Code)
        );
    }

    private static ToolUse Use(double metres) =>
        new(
            Guid.CreateVersion7(SampleTime.Start),
            "NR4-0001",
            Length.FromMetres(metres),
            ChargeBasis.ProcessLog,
            SampleTime.Start,
            "J1"
        );

    private static InspectionEntry Wear(string length, string diameter) =>
        new(
            ToolInspectionKind.Wear,
            true,
            "",
            new PinReading(Of(length), Of(diameter), SampleInstruments.Caliper(), "CAL-7"),
            null
        );

    private static Measured Of(string digits) => new(digits, "mm");

    private static Outcome Inspect(Tool tool, InspectionEntry entry, DateOnly? today = null) =>
        tool.Inspect(
            entry,
            Design,
            today ?? SampleTime.Day,
            SamplePeople.Operator,
            SampleTime.Start
        );
}
