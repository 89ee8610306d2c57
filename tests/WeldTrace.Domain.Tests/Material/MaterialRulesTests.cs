using WeldTrace.Domain.Material;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Material;

/// <summary>Floor rule F7: ISO 25239-5:2020 4.12.2 asks for alloy and temper, EN 10204 orders the documents 2.1, 2.2, 3.1, 3.2.</summary>
public sealed class MaterialRulesTests
{
    private static readonly ProcedureContent Procedure = SampleProcedures.Content(
        SampleTools.Design()
    );

    public static TheoryData<
        InspectionDocumentType?,
        InspectionDocumentType?,
        bool
    > DocumentTable =>
        new()
        {
            { null, null, true },
            { null, InspectionDocumentType.Type21, true },
            { InspectionDocumentType.Type21, null, false },
            { InspectionDocumentType.Type21, InspectionDocumentType.Type21, true },
            { InspectionDocumentType.Type22, InspectionDocumentType.Type21, false },
            { InspectionDocumentType.Type31, InspectionDocumentType.Type21, false },
            { InspectionDocumentType.Type31, InspectionDocumentType.Type22, false },
            { InspectionDocumentType.Type31, InspectionDocumentType.Type31, true },
            { InspectionDocumentType.Type31, InspectionDocumentType.Type32, true },
            { InspectionDocumentType.Type32, InspectionDocumentType.Type31, false },
        };

    [Theory]
    [MemberData(nameof(DocumentTable))]
    public void ForWelding_RequiredDocument_RefusesAWeakerOne(
        InspectionDocumentType? required,
        InspectionDocumentType? onFile,
        bool holds
    )
    {
        var lot = SampleMaterial.Bare();
        if (onFile is { } type)
        {
            Accept.All(
                lot.FileDocument(
                    type,
                    "EN 755-2",
                    new string('d', 64),
                    SamplePeople.Inspector,
                    SampleTime.Start
                ),
                lot.RecordResults(
                    SampleMaterial.Values("290", null, null),
                    null,
                    SamplePeople.Inspector,
                    SampleTime.Start
                )
            );
        }

        Assert.Equal(holds, Holds(lot, design: required));
        Assert.Equal(holds, Holds(lot, site: required));
    }

    [Fact]
    public void ForWelding_DesignAndSite_TheStrongerCounts()
    {
        var lot = SampleMaterial.Lot();

        Assert.False(Holds(lot, InspectionDocumentType.Type22, InspectionDocumentType.Type32));
        Assert.False(Holds(lot, InspectionDocumentType.Type32, InspectionDocumentType.Type22));
        Assert.True(Holds(lot, InspectionDocumentType.Type31, InspectionDocumentType.Type21));
    }

    [Fact]
    public void ForWelding_DocumentWithoutScanOrResults_Forbids()
    {
        var lot = SampleMaterial.Bare();
        Accept.All(
            lot.FileDocument(
                InspectionDocumentType.Type31,
                "EN 755-2",
                null,
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );
        var unscanned = Judge(lot, InspectionDocumentType.Type31);
        Accept.All(
            lot.FileDocument(
                InspectionDocumentType.Type31,
                "EN 755-2",
                new string('d', 64),
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );
        var unread = Judge(lot, InspectionDocumentType.Type31);

        Assert.Contains("not scanned in", unscanned.Reason, StringComparison.Ordinal);
        Assert.Contains("results", unread.Reason, StringComparison.Ordinal);
        Assert.Equal(RuleStanding.Forbids, unread.Standing);
    }

    [Theory]
    [InlineData("6061", "T6", true)]
    [InlineData("6061 ", "t6", true)]
    [InlineData("6061", "T4", false)]
    [InlineData("6082", "T6", false)]
    public void ForWelding_AlloyAndTemper_MustBeTheDesigns(
        string alloy,
        string temper,
        bool holds
    ) => Assert.Equal(holds, Holds(SampleMaterial.Bare("ML-1", alloy, temper)));

    [Fact]
    public void ForWelding_ProcedureForAnotherMaterial_Forbids()
    {
        var lot = SampleMaterial.Lot();
        var other = Procedure with { Alloy = "6082" };
        var both = other with
        {
            Details = ProcedureDetails.None with
            {
                Other = new OtherParent("6061", "T6", Length.FromMillimetres(3)),
            },
        };

        Assert.Contains("6082-T6", Judge(lot, procedure: other).Reason, StringComparison.Ordinal);
        Assert.Equal(RuleStanding.Holds, Judge(lot, procedure: both).Standing);
    }

    [Fact]
    public void ForWelding_LotUnknown_Forbids()
    {
        var lot = SampleMaterial.Lot();
        var vessel = Plan(lot);

        var verdict = MaterialRules.ForWelding(
            vessel,
            SampleDesigns.Content(),
            Procedure,
            new MaterialFacts([], [], null)
        );

        Assert.Equal(RuleStanding.Forbids, verdict.Standing);
        Assert.Contains(vessel.Components[0].Serial, verdict.Reason, StringComparison.Ordinal);
    }

    /// <summary>Minima 262.0 MPa, 241.3 MPa, 14 %: rounded to the written decimals, 261.96 meets 262.0 and 261.94 does not.</summary>
    [Theory]
    [InlineData("295", "268", "15", true)]
    [InlineData("261.96", "241.3", "14", true)]
    [InlineData("261.94", "250", "15", false)]
    [InlineData("295", "241.2", "15", false)]
    [InlineData("295", "268", "13.4", false)]
    [InlineData("295", "268", null, false)]
    public void ForWelding_ResultBelowAMinimum_Forbids(
        string ultimate,
        string proof,
        string? elongation,
        bool holds
    )
    {
        var lot = SampleMaterial.Bare();
        Accept.All(
            lot.FileDocument(
                InspectionDocumentType.Type31,
                "ASTM B241",
                new string('d', 64),
                SamplePeople.Inspector,
                SampleTime.Start
            ),
            lot.RecordResults(
                SampleMaterial.Values(ultimate, proof, elongation),
                SampleMaterial.Minima(),
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );

        var verdict = Judge(lot);

        Assert.Equal(holds, verdict.Standing == RuleStanding.Holds);
        Assert.Equal(
            holds,
            verdict.Reason.Contains("not checked against", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void ForWelding_HeatTreatmentNotKept_Forbids()
    {
        var lot = SampleMaterial.Lot();
        var vessel = Plan(lot);
        var treatment = SampleHeat.Entered(
            "158",
            [new TreatedPart(vessel.Id, vessel.Serial, true)]
        );

        var verdict = MaterialRules.ForWelding(
            vessel,
            SampleDesigns.Content(),
            Procedure,
            new MaterialFacts([lot], [treatment], null)
        );

        Assert.Equal(RuleStanding.Forbids, verdict.Standing);
        Assert.Contains("158 min is shorter", verdict.Reason, StringComparison.Ordinal);
    }

    private static Vessel Plan(MaterialLot lot) =>
        SampleVessels.Planned(SampleDesigns.Released(), lot);

    private static bool Holds(
        MaterialLot lot,
        InspectionDocumentType? design = null,
        InspectionDocumentType? site = null
    ) => Judge(lot, design, site).Standing == RuleStanding.Holds;

    private static RuleVerdict Judge(
        MaterialLot lot,
        InspectionDocumentType? design = null,
        InspectionDocumentType? site = null,
        ProcedureContent? procedure = null
    ) =>
        MaterialRules.ForWelding(
            Plan(lot),
            SampleDesigns.Content() with
            {
                RequiredDocument = design,
            },
            procedure ?? Procedure,
            new MaterialFacts([lot], [], site)
        );
}
