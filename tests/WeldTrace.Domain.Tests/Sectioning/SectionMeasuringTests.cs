using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Paths;
using WeldTrace.TestSupport.Records;
using Xunit;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Tests.Sectioning;

public sealed class SectionMeasuringTests
{
    private static readonly DateTimeOffset At = SampleTime.Start;

    [Theory]
    [InlineData(100, Verdict.Pass)]
    [InlineData(290, Verdict.Undecided)]
    [InlineData(500, Verdict.Fail)]
    public void Hook_IsJudgedWithItsUncertainty(int micrometres, Verdict expected)
    {
        var section = Accept.Value(
            SampleTests.RecordSection(new SampleShop().Reach(50), new(micrometres))
        );

        var mark = Assert.Single(section.Picture!.Marks);
        Assert.Equal((expected, expected), (mark.Result.Verdict, section.Verdict));
        Assert.Equal(
            (WeldSide.Advancing, "0.100"),
            (mark.Result.Side, mark.Result.FromFace.Digits)
        );
    }

    /// <summary>ISO 25239-5:2011 annex A as the shipped table has it: underfill 0.2 mm + 0.1·t; t = 6 mm gives 0.80 mm.</summary>
    [Theory]
    [InlineData(790, Verdict.Pass)]
    [InlineData(870, Verdict.Fail)]
    public void Underfill_IsJudgedByTheFormulaInTheThickness(int micrometres, Verdict expected)
    {
        var section = Ready();

        Accept.All(Measure(section, Mark(Imperfection.Underfill, micrometres)));

        var result = section.Picture!.Marks[0].Result;
        Assert.Equal(expected, result.Verdict);
        Assert.Equal("0.2 mm + 0.1·t, t = 6 mm", result.Limit!.Formula);
        Assert.Contains("ISO 25239-5:2011", result.Limit.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void Crack_OfAnySize_Fails_AlsoAsAPoint()
    {
        var section = Ready();
        var point = Mark(Imperfection.Crack, 0) with
        {
            Shape = PictureShape.Point,
            Points = [new(300, 300)],
        };

        Accept.All(Measure(section, point));
        Accept.All(Measure(section, Mark(Imperfection.Crack, 1)));
        Accept.All(section.Conclude("A crack.", SamplePeople.Inspector, At));

        Assert.All(section.Picture!.Marks, m => Assert.Equal(Verdict.Fail, m.Result.Verdict));
        Assert.Equal(Verdict.Fail, section.Verdict);
    }

    [Fact]
    public void Cavity_AsAPoint_IsRefused_SinceItsSizeDecides() =>
        Assert.Equal(
            "shape",
            Refused(
                Ready(),
                Mark(Imperfection.Cavity, 0) with
                {
                    Shape = PictureShape.Point,
                    Points = [new(300, 300)],
                }
            )
        );

    [Fact]
    public void Hook_WithoutALimitOfTheDesign_IsRefused() =>
        Assert.Equal(
            "no-limit",
            Refused(Ready(), Mark(Imperfection.Hook, 100) with { DesignLimit = null })
        );

    [Theory]
    [InlineData(1201, 10)]
    [InlineData(10, 801)]
    [InlineData(-1, 10)]
    public void Point_OutsideThePicture_IsRefused(double x, double y) =>
        Assert.Equal(
            "outside",
            Refused(
                Ready(),
                Mark(Imperfection.Underfill, 100) with
                {
                    Points = [new(100, 100), new(x, y)],
                }
            )
        );

    [Fact]
    public void Picture_WithoutScale_IsNeitherMeasuredNorConcluded()
    {
        var section = Accept.Value(SampleTests.TakeInSection(new SampleShop().Reach(50)));

        Assert.Equal("scale", Refused(section, Mark(Imperfection.Underfill, 100)));
        Assert.Equal(
            "scale",
            Assert.Single(section.Conclude("Sound.", SamplePeople.Inspector, At).Refusals).Code
        );
        Assert.Null(section.Verdict);
    }

    [Fact]
    public void Scale_WithNeitherLengthNorPixel_IsRefused()
    {
        var section = Accept.Value(SampleTests.TakeInSection(new SampleShop().Reach(50)));

        var outcome = section.SetScale(
            SampleTests.SetUpOfPicture() with
            {
                PixelLength = null,
            },
            null,
            SamplePeople.Inspector,
            At
        );

        Assert.Contains(
            outcome.Refusals,
            r => r.Sentence.Contains("Without a scale", StringComparison.Ordinal)
        );
        Assert.Null(section.Picture!.SetUp);
    }

    [Fact]
    public void Section_WithoutImperfection_PassesOnlyWhenConcluded_AndAChangeTakesThatBack()
    {
        var section = Ready();
        Assert.Null(section.Verdict);

        Accept.All(section.Conclude("Sound.", SamplePeople.Inspector, At));
        Assert.Equal(Verdict.Pass, section.Verdict);

        Accept.All(Measure(section, Mark(Imperfection.Underfill, 100)));
        Assert.Null(section.Verdict);
        Assert.Null(section.Picture!.Seen);
    }

    [Fact]
    public void Correction_KeepsWhatWasReplaced_AndNeedsAReason()
    {
        var section = Ready();
        Accept.All(Measure(section, Mark(Imperfection.Underfill, 900)));

        var unreasoned = section.Correct(
            1,
            Mark(Imperfection.Underfill, 700),
            SampleTests.Limits,
            " ",
            SamplePeople.Inspector,
            At
        );
        Assert.Equal("Reason", Assert.Single(unreasoned.Refusals).Field);
        Accept.All(
            section.Correct(
                1,
                Mark(Imperfection.Underfill, 700),
                SampleTests.Limits,
                "wrong edge",
                SamplePeople.Inspector,
                At
            )
        );
        Accept.All(
            section.Correct(1, null, SampleTests.Limits, "no underfill", SamplePeople.Inspector, At)
        );
        Accept.All(Measure(section, Mark(Imperfection.Underfill, 100)));

        Assert.Equal(2, Assert.Single(section.Picture!.Marks).Number);
        Assert.Equal(
            ["0.900 mm wrong edge", "0.700 mm no underfill"],
            section.Picture.Corrections.Select(c => $"{c.Mark!.Result.Size} {c.Reason}")
        );
    }

    [Fact]
    public void ScaleCorrected_MeasuresAgain_AndKeepsTheOldScale()
    {
        var section = Ready();
        Accept.All(Measure(section, Mark(Imperfection.Underfill, 500)));

        Accept.All(
            section.SetScale(
                SampleTests.SetUpOfPicture() with
                {
                    PixelLength = new Measured("2", "µm"),
                },
                "2 µm by the certificate",
                SamplePeople.Inspector,
                At
            )
        );

        var result = section.Picture!.Marks[0].Result;
        Assert.Equal(("1.000", Verdict.Fail), (result.Size!.Digits, result.Verdict));
        Assert.Equal(
            "1 µm",
            Assert.Single(section.Picture.Corrections).SetUp!.PixelLength!.ToString()
        );
    }

    /// <summary>Nobody takes back alone what had shown a failure, even after correcting it away.</summary>
    [Fact]
    public void Withdrawal_AfterAFailingMarkWasStruck_NeedsSomeoneElse()
    {
        var section = Ready();
        Accept.All(Measure(section, Mark(Imperfection.Underfill, 900)));
        Accept.All(
            section.Correct(1, null, SampleTests.Limits, "a scratch", SamplePeople.Inspector, At)
        );

        Assert.Equal(
            "second-person",
            Assert
                .Single(section.Withdraw("another picture", SamplePeople.Inspector, At).Refusals)
                .Code
        );
        Accept.All(section.Withdraw("another picture", SamplePeople.QualityManager, At));
    }

    [Fact]
    public void SignedSection_ChangesNoMore()
    {
        var shop = new SampleShop().Reach(50);
        var section = Accept.Value(SampleTests.RecordSection(shop, new(100)));
        Accept.Value(SampleTests.Sign(shop, section));

        Assert.Equal("state", Refused(section, Mark(Imperfection.Underfill, 100)));
    }

    /// <summary>A section whose scale is set: a pixel of 1 µm.</summary>
    private static SectionExamination Ready()
    {
        var section = Accept.Value(SampleTests.TakeInSection(new SampleShop().Reach(50)));
        Accept.All(
            section.SetScale(SampleTests.SetUpOfPicture(), null, SamplePeople.Inspector, At)
        );
        return section;
    }

    private static MarkEntry Mark(Imperfection imperfection, int micrometres) =>
        new SampleTests.Hook(0).Entry with
        {
            Imperfection = imperfection,
            Points = [new(100, 200), new(100 + micrometres, 200)],
        };

    private static Outcome Measure(SectionExamination section, MarkEntry entry) =>
        section.Measure(entry, SampleTests.Limits, SamplePeople.Inspector, At);

    private static string Refused(SectionExamination section, MarkEntry entry) =>
        Assert.Single(Measure(section, entry).Refusals).Code;
}
