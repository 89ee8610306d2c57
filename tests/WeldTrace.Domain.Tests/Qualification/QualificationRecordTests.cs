using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Qualification;

public sealed class QualificationRecordTests
{
    private readonly ToolDesign _design = SampleTools.Design();

    [Fact]
    public void Sign_WithoutResults_NamesEveryMissingOne()
    {
        var revision = SampleProcedures.OnTrial(_design);
        var record = SampleQualifications.Open(revision);

        var refused = SampleQualifications.Sign(new(record, [], []), revision);

        // Two pieces, and for each the visual examination and one macro section of a lap joint.
        Assert.Equal(6, refused.Refusals.Count(r => r.Code == "incomplete"));
        Assert.Null(record.Range);
    }

    [Fact]
    public void Sign_OneResultMissing_NamesIt()
    {
        var revision = SampleProcedures.OnTrial(_design);
        var whole = SampleQualifications.Signed(SampleProcedures.OnTrial(_design), _design);
        var record = SampleQualifications.Open(revision);
        var pieces = record
            .Plan.Pieces.Select(p => SampleQualifications.Welded(record, p, revision, _design))
            .ToList();

        var refused = SampleQualifications.Sign(
            new SampleQualification(record, pieces, []),
            revision
        );

        Assert.Equal(
            ["1-MA1", "1-VT1", "2-MA1", "2-VT1"],
            refused.Refusals.Select(r => r.Sentence.Split(',')[0]).Order()
        );
        Assert.True(whole.Record.IsSealed);
    }

    [Fact]
    public void Sign_Complete_SealsAndStatesTheRange()
    {
        var sample = SampleQualifications.Signed(SampleProcedures.OnTrial(_design), _design);

        Assert.Equal(QualificationState.Signed, sample.Record.State);
        Assert.Equal(["6061-T6"], sample.Record.Range!.Materials);
        Assert.Contains(
            "Covers lap joints in 6061-T6, 3 mm thick",
            RangeWords.Sentence(sample.Record.Range),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Sign_ByOperator_IsRefused()
    {
        var revision = SampleProcedures.OnTrial(_design);
        var record = SampleQualifications.Open(revision);

        var refused = SampleQualifications.Sign(
            new(record, [], []),
            revision,
            null,
            SamplePeople.Operator
        );

        Assert.Contains(refused.Refusals, r => r.Code == "role");
    }

    [Fact]
    public void Open_ForDraft_IsRefused()
    {
        var refused = QualificationRecord.Open(
            "Q-1",
            SampleProcedures.Draft(_design),
            SampleQualifications.Request,
            SampleQualifications.Tables,
            SamplePeople.Engineer,
            SampleTime.Start
        );

        Assert.Equal("state", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Abandon_Open_KeepsReasonAndCloses()
    {
        var record = SampleQualifications.Open(SampleProcedures.OnTrial(_design));

        Accept.All(
            record.Abandon("Cavities in both pieces.", SamplePeople.Engineer, SampleTime.Start)
        );

        Assert.Equal(QualificationState.Abandoned, record.State);
        Assert.True(record.IsSealed);
    }

    [Fact]
    public void Range_ArcWeldComparison_WidensMaterialAndThickness_BSEN288_4()
    {
        // 3 mm welded in one run: 0.8 t to 1.1 t = 2.4 to 3.3 mm; 6061 is of group 23.1, as 6082.
        var tables = SampleQualifications.TablesOf("RANGE-288");
        var range = SampleQualifications
            .Signed(SampleProcedures.OnTrial(_design), _design, tables)
            .Record.Range!;

        Assert.Equal(2.4, range.Thickness.Thinnest.Millimetres, 1e-9);
        Assert.Equal(3.3, range.Thickness.Thickest.Millimetres, 1e-9);
        Assert.True(range.CoversMaterial("6082", "T4"));
        Assert.False(range.CoversMaterial("5083", "O"));
    }

    [Theory]
    [InlineData(2, 2, 4)]
    [InlineData(3, 3, 6)]
    [InlineData(8, 3, 16)]
    [InlineData(12, 3, 24)]
    [InlineData(20, 10, 40)]
    [InlineData(90, 45, 150)]
    [InlineData(120, 60, 180)]
    public void Thickness_SeveralRuns_MatchesTable_BSEN288_4(
        double tested,
        double thinnest,
        double thickest
    )
    {
        var range = RangeRules
            .Thickness(
                SampleLimits.Of("RANGE-288"),
                Length.FromMillimetres(tested),
                severalPasses: true
            )
            .Value;

        Assert.Equal(thinnest, range.Thinnest.Millimetres, 1e-9);
        Assert.Equal(thickest, range.Thickest.Millimetres, 1e-9);
    }
}
