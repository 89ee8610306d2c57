using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
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
    public void Qualify_WithoutRecord_IsRefused()
    {
        var revision = SampleProcedures.OnTrial(_design);

        var refused = revision.Qualify(null, SamplePeople.Engineer, SampleTime.Start);

        Assert.Equal("wpqr", Assert.Single(refused.Refusals).Code);
        Assert.Equal(ProcedureState.Trial, revision.State);
    }

    [Fact]
    public void Qualify_WithOpenRecord_IsRefused()
    {
        var revision = SampleProcedures.OnTrial(_design);
        var record = SampleQualifications.Open(revision);

        var refused = revision.Qualify(record, SamplePeople.Engineer, SampleTime.Start);

        Assert.Equal("wpqr", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Release_BeforeItIsQualified_IsRefused()
    {
        var revision = SampleProcedures.OnTrial(_design);

        var refused = revision.Release(null, SamplePeople.SecondEngineer, SampleTime.Start);

        Assert.Equal("state", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Release_EarlierRevisionOverLaterOne_IsRefused()
    {
        var first = SampleProcedures.OnTrial(_design);
        var record = SampleQualifications.Signed(first, _design).Record;
        Accept.All(first.Qualify(record, SamplePeople.Engineer, SampleTime.Start));
        var second = Next(first, c => c);
        SampleProcedures.Release(second, record);

        var refused = first.Release(second, SamplePeople.SecondEngineer, SampleTime.Start);

        Assert.Equal("supersession", Assert.Single(refused.Refusals).Code);
        Assert.Equal(ProcedureState.Released, second.State);
    }

    [Fact]
    public void Qualify_NarrowerWindow_StaysCoveredByTheEarlierRecord()
    {
        var (first, record) = Qualified();
        var second = Next(
            first,
            c => WithWindow(c, new(WeldParameter.AxialForce, 8, 7.5m, 8.5m, "kN", true))
        );

        Accept.All(second.Qualify(record, SamplePeople.Engineer, SampleTime.Start));

        Assert.Equal(record.Number, second.Qualified?.Number);
    }

    [Fact]
    public void Qualify_SameWindowInOtherUnits_StaysCovered()
    {
        var (first, record) = Qualified();
        var second = Next(
            first,
            c => WithWindow(c, new(WeldParameter.AxialForce, 8000, 7200, 8800, "N", true))
        );

        Accept.All(second.Qualify(record, SamplePeople.Engineer, SampleTime.Start));
    }

    public static TheoryData<string, string> Changes { get; } =
        new()
        {
            { "force", "Axial force" },
            { "thickness", "Thickness" },
            { "temper", "Parent material" },
            { "joint", "Joint type" },
            { "tool", "Tool design" },
            { "sense", "Spindle sense" },
            { "new essential", "Tilt angle" },
            { "words", "Backing material" },
            { "dropped", "Plunge depth" },
        };

    [Theory]
    [MemberData(nameof(Changes))]
    public void Qualify_EssentialVariableBeyondItsRange_ForcesRequalificationAndNamesIt(
        string change,
        string named
    )
    {
        var (first, record) = Qualified();
        var second = Next(first, c => Changed(c, change));

        var refused = second.Qualify(record, SamplePeople.Engineer, SampleTime.Start);

        var refusal = Assert.Single(refused.Refusals);
        Assert.Equal("requalify", refusal.Code);
        Assert.StartsWith(named, refusal.Sentence, StringComparison.Ordinal);
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
        var range = RangeRules.Thickness(
            SampleLimits.Of("RANGE-288"),
            Length.FromMillimetres(tested),
            severalPasses: true
        );

        Assert.Equal(thinnest, range.Thinnest.Millimetres, 1e-9);
        Assert.Equal(thickest, range.Thickest.Millimetres, 1e-9);
    }

    private (ProcedureRevision Revision, QualificationRecord Record) Qualified()
    {
        var draft = SampleProcedures.Draft(_design);
        Accept.All(
            draft.Edit(
                draft.Title,
                draft.Content with
                {
                    Details = new ProcedureDetails
                    {
                        Particulars = [new(ProcedureField.BackingMaterial, "tool steel", true)],
                    },
                },
                SamplePeople.Engineer,
                SampleTime.Start
            ),
            draft.PutOnTrial(SamplePeople.Engineer, SampleTime.Start)
        );
        return (draft, SampleQualifications.Signed(draft, _design).Record);
    }

    private static ProcedureRevision Next(
        ProcedureRevision before,
        Func<ProcedureContent, ProcedureContent> change
    )
    {
        var next = Accept.Value(
            before.Revise(2, "change", SamplePeople.Engineer, SampleTime.Start)
        );
        Accept.All(
            next.Edit(next.Title, change(next.Content), SamplePeople.Engineer, SampleTime.Start),
            next.PutOnTrial(SamplePeople.Engineer, SampleTime.Start)
        );
        return next;
    }

    private static ProcedureContent Changed(ProcedureContent content, string change) =>
        change switch
        {
            "force" => WithWindow(content, new(WeldParameter.AxialForce, 8, 7.2m, 9, "kN", true)),
            "thickness" => content with { Thickness = Length.FromMillimetres(3.1) },
            "temper" => content with { Temper = "T4" },
            "joint" => content with { JointType = "butt" },
            "tool" => content with
            {
                ToolDesignId = new Guid(9, 9, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 9),
                ToolDesignLabel = "TD-99 rev A",
            },
            "sense" => content with
            {
                SpindleSense = Engineering.Paths.RotationSense.CounterClockwise,
            },
            "new essential" => WithWindow(
                content,
                new(WeldParameter.TiltAngle, 2, 1, 3, "°", true)
            ),
            "words" => content with
            {
                Details = content.DetailsOrNone with
                {
                    Particulars = [new(ProcedureField.BackingMaterial, "copper", true)],
                },
            },
            "dropped" => content with
            {
                Windows = [.. content.Windows.Where(w => w.Parameter != WeldParameter.PlungeDepth)],
            },
            _ => throw new ArgumentOutOfRangeException(nameof(change)),
        };

    private static ProcedureContent WithWindow(ProcedureContent content, ParameterWindow window) =>
        content with
        {
            Windows = [.. content.Windows.Where(w => w.Parameter != window.Parameter), window],
        };
}
