using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Joints;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Qualification;

public sealed class SpecimenTestTests
{
    private readonly ToolDesign _design = SampleTools.Design();
    private readonly ProcedureRevision _revision;
    private readonly QualificationRecord _record;
    private readonly TestPiece _piece;

    public SpecimenTestTests()
    {
        var draft = SampleProcedures.Draft(_design);
        Accept.All(
            draft.Edit(
                draft.Title,
                draft.Content with
                {
                    JointType = "butt",
                    Details = new ProcedureDetails { PostWeld = PostWeldCondition.NaturalAgeing },
                },
                SamplePeople.Engineer,
                SampleTime.Start
            ),
            draft.PutOnTrial(SamplePeople.Engineer, SampleTime.Start)
        );
        _revision = draft;
        _record = SampleQualifications.Open(_revision);
        _piece = SampleQualifications.Welded(_record, _record.Plan.Pieces[0], _revision, _design);
    }

    [Theory]
    [InlineData("11.70", Verdict.Pass)]
    [InlineData("11.69", Verdict.Fail)]
    public void Enter_Tensile_IsJudgedByFactorTimesMinimum(string kilonewtons, Verdict verdict)
    {
        // 0.6 × 260 MPa = 156.0 MPa on 25.0 × 3.00 mm is 11.70 kN; worked by hand.
        var test = Accept.Value(Enter("1-T1", SampleQualifications.Tensile(kilonewtons)));

        Assert.Equal(verdict, test.Verdict);
        Assert.Contains("0.6 × 260 MPa", test.VerdictSentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Enter_TensileWithoutFracturePlace_IsRefused_ISO4136()
    {
        var entry = SampleQualifications.Tensile("15");
        var refused = Enter(
            "1-T1",
            entry with
            {
                Tensile = entry.Tensile! with { Place = FracturePlace.Unknown },
            }
        );

        Assert.Equal("Place", Assert.Single(refused.Refusals).Field);
    }

    [Theory]
    [InlineData("3", Verdict.Pass)]
    [InlineData("3.4", Verdict.Pass)]
    [InlineData("3.6", Verdict.Fail)]
    public void Enter_Bend_AllowsCracksOfThreeMillimetres(string crack, Verdict verdict)
    {
        // Rounded to the written place of the limit, 3 mm (ISO 80000-1 rule A): 3.4 meets it, 3.6 does not.
        var test = Accept.Value(Enter("1-RB1", SampleQualifications.Bend(crack)));

        Assert.Equal(verdict, test.Verdict);
    }

    [Fact]
    public void Enter_BendOverTooLargeAFormer_IsNoTest()
    {
        // BS EN 288-4: 7 t for group 23 in T6, so 21 mm at 3 mm.
        var refused = Enter("1-RB1", SampleQualifications.Bend("0", former: "24"));

        Assert.Equal("Former", Assert.Single(refused.Refusals).Field);
    }

    [Fact]
    public void Enter_Section_JudgesEachImperfectionByThickness()
    {
        // ISO 25239-5:2011 (from memory): cavity 0.2 × 3 = 0.6 mm, underfill 0.2 + 0.1 × 3 = 0.5 mm.
        var good = SampleQualifications.Examination(
            true,
            new SizedImperfection("cavity", new("0.6", "mm"), null),
            new SizedImperfection("underfill", new("0.5", "mm"), null)
        );
        var bad = SampleQualifications.Examination(
            true,
            new SizedImperfection("cavity", new("0.7", "mm"), null)
        );

        Assert.Equal(Verdict.Pass, Accept.Value(Enter("1-MA1", good)).Verdict);
        Assert.Equal(Verdict.Fail, Accept.Value(Enter("1-MA1", bad)).Verdict);
    }

    [Fact]
    public void Enter_ImperfectionWithoutLimit_NeedsThatOfTheDesign()
    {
        var hook = new SizedImperfection("hook", new("0.3", "mm"), null);

        var refused = Enter("1-MA1", SampleQualifications.Examination(true, hook));
        var judged = Enter(
            "1-MA1",
            SampleQualifications.Examination(true, hook with { DesignLimit = new("0.4", "mm") })
        );

        Assert.Equal("no-limit", Assert.Single(refused.Refusals).Code);
        Assert.Equal(Verdict.Pass, Accept.Value(judged).Verdict);
    }

    [Fact]
    public void Enter_NotAcceptableSurface_Fails() =>
        Assert.Equal(
            Verdict.Fail,
            Accept.Value(Enter("1-VT1", SampleQualifications.Examination(false))).Verdict
        );

    [Fact]
    public void Enter_WithoutCertificateForTheMethod_IsRefusedByF19()
    {
        var refused = Enter(
            "1-VT1",
            SampleQualifications.Examination(true),
            f => f with { Certificates = [] }
        );

        Assert.Equal("F19", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Enter_WithoutInstrument_IsRefusedByF13()
    {
        var refused = Enter(
            "1-T1",
            SampleQualifications.Tensile("15"),
            f => f with { Instrument = null }
        );

        Assert.Equal("F13", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Enter_BeforeThePieceIsWelded_IsRefused()
    {
        var refused = Enter(
            "1-VT1",
            SampleQualifications.Examination(true),
            f => f with { Piece = null }
        );

        Assert.Equal("piece", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Enter_EmptyHeader_NamesMethodAndAcceptanceApart()
    {
        var header = SampleQualifications.Header(TestKind.Visual) with
        {
            Method = "",
            MethodEdition = "",
            Acceptance = "",
            AcceptanceEdition = "",
        };

        var refused = SampleQualifications.Enter(
            _record,
            Planned("1-VT1"),
            _piece,
            [],
            _revision.Content,
            SampleQualifications.Examination(true),
            null,
            header
        );

        Assert.Equal(
            ["Acceptance", "AcceptanceEdition", "Method", "MethodEdition"],
            refused.Refusals.Select(r => r.Field).Order()
        );
    }

    [Fact]
    public void Retest_TwoReplacementsPass_TheFirstFailureStaysVisible()
    {
        List<SpecimenTest> results =
        [
            Accept.Value(Enter("1-T1", SampleQualifications.Tensile("10"))),
        ];
        Assert.Equal(PlannedTestState.NeedsReplacements, QualificationStanding.StateOf(results));

        results.Add(Again(results, "15"));
        Assert.Equal(PlannedTestState.NeedsReplacements, QualificationStanding.StateOf(results));
        results.Add(Again(results, "15"));

        Assert.Equal(PlannedTestState.Passed, QualificationStanding.StateOf(results));
        Assert.Equal([0, 1, 2], results.Select(r => r.Attempt));
        Assert.Equal(Verdict.Fail, results[0].Verdict);
        var refused = Enter(
            "1-T1",
            SampleQualifications.Tensile("15"),
            f => f with { Earlier = results }
        );
        Assert.Equal("passed", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void Retest_ReplacementFails_NothingFurtherIsAllowed()
    {
        List<SpecimenTest> results =
        [
            Accept.Value(Enter("1-T1", SampleQualifications.Tensile("10"))),
        ];
        results.Add(Again(results, "10"));

        Assert.Equal(PlannedTestState.Failed, QualificationStanding.StateOf(results));
        var refused = Enter(
            "1-T1",
            SampleQualifications.Tensile("15"),
            f => f with { Earlier = results }
        );
        Assert.Equal("failed", Assert.Single(refused.Refusals).Code);
    }

    private SpecimenTest Again(List<SpecimenTest> earlier, string kilonewtons) =>
        Accept.Value(
            Enter(
                "1-T1",
                SampleQualifications.Tensile(kilonewtons),
                f => f with { Earlier = [.. earlier] }
            )
        );

    private PlannedTest Planned(string id) => _record.Plan.Tests.Single(t => t.Id == id);

    private Outcome<SpecimenTest> Enter(
        string id,
        SpecimenEntry entry,
        Func<SpecimenFacts, SpecimenFacts>? edit = null
    ) =>
        SampleQualifications.Enter(
            _record,
            Planned(id),
            _piece,
            [],
            _revision.Content,
            entry,
            edit
        );
}
