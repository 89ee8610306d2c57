using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Qualification;

public sealed class ProcedureSupportTests
{
    private readonly ToolDesign _design = SampleTools.Design();

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
