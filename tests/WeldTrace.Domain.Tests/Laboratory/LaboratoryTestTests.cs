using System.Globalization;
using CsCheck;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Joints;
using WeldTrace.TestSupport.Records;
using Xunit;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Tests.Laboratory;

/// <summary>Figures against the project's check table of joint strength, cases I1, I2.4 and I4 (double-precision and numpy re-evaluation).</summary>
public sealed partial class LaboratoryTestTests
{
    private static readonly Instrument Machine = SampleInstruments.Calibrated(
        "TM-2",
        InstrumentKind.Mechanical,
        "kN"
    );

    [Fact]
    public void Tensile_ThreeSpecimens_GivesStrengthMeanAndEfficiencyOfTheCheckTable()
    {
        var test = Accept.Value(Enter(TestKind.TransverseTensile, new(Tensile: Tensile("300"))));

        Assert.Equal(Verdict.Pass, test.Verdict);
        Assert.Equal("318.0 MPa", test.Lines[0].Value);
        Assert.Equal(0.6685245288, test.Efficiency()!.Mean, 1e-9);
        Assert.Equal(0.662199439, test.Efficiency()!.Minimum, 1e-9);
        Assert.Contains(test.Lines, l => l is { Name: "Mean joint efficiency", Value: "0.669" });
    }

    [Fact]
    public void Tensile_OneSpecimenBelow_FailsTheTest_AndNamesIt()
    {
        var test = Accept.Value(Enter(TestKind.TransverseTensile, new(Tensile: Tensile("317"))));

        Assert.Equal(Verdict.Fail, test.Verdict);
        Assert.StartsWith("T3: Tensile strength", test.VerdictSentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Tensile_LimitInsideTheUncertainty_IsUndecided() =>
        Assert.Equal(
            Verdict.Undecided,
            Accept
                .Value(Enter(TestKind.TransverseTensile, new(Tensile: Tensile("314", "0.12"))))
                .Verdict
        );

    [Fact]
    public void Hardness_OfTheCheckTable_GivesMinimumPlaceAndRatio()
    {
        var test = Accept.Value(Enter(TestKind.Hardness, new(Hardness: Traverse("100"))));

        Assert.Equal(Verdict.Pass, test.Verdict);
        Assert.Equal(["110.0 HV", "6.0 mm", "0.728"], test.Lines.Take(3).Select(l => l.Value));
        Assert.Equal(0.7284768212, test.Traverse()!.RatioToParent, 1e-9);
    }

    [Fact]
    public void Hardness_BelowTheLeast_Fails() =>
        Assert.Equal(
            Verdict.Fail,
            Accept.Value(Enter(TestKind.Hardness, new(Hardness: Traverse("111")))).Verdict
        );

    [Theory]
    [InlineData("180", "2.5", Verdict.Pass)]
    [InlineData("170", "2.5", Verdict.Fail)]
    [InlineData("180", "3.5", Verdict.Fail)]
    public void Bend_IsJudgedByAngleAndCrack(string angle, string crack, Verdict expected) =>
        Assert.Equal(
            expected,
            Accept.Value(Enter(TestKind.RootBend, new(Bend: Bend("30", angle, crack)))).Verdict
        );

    [Fact]
    public void Bend_OverALargerFormer_IsRefused() =>
        Assert.Equal(
            "former",
            Assert.Single(Enter(TestKind.RootBend, new(Bend: Bend("40", "180", "0"))).Refusals).Code
        );

    [Fact]
    public void Test_OfNothing_TellsAllThatIsMissing()
    {
        var outcome = Enter(
            TestKind.TransverseTensile,
            new(Tensile: Tensile("300") with { Specimens = [] }),
            sample: Sample with
            {
                ProductionLot = "",
                Place = "",
                JointCode = "",
            }
        );

        Assert.Equal(
            ["lot or vessel", "JointCode", "Place", "Rows"],
            outcome.Refusals.Select(r => r.Code == "subject" ? "lot or vessel" : r.Field)
        );
    }

    [Fact]
    public void Test_ByAnotherRole_WithoutCertificate_OrWithoutMachine_IsRefused()
    {
        Assert.Contains(
            "role",
            Codes(Enter(TestKind.Hardness, new(Hardness: Traverse(null)), SamplePeople.Engineer))
        );
        Assert.NotEmpty(
            Enter(
                TestKind.Hardness,
                new(Hardness: Traverse(null)),
                facts: Facts with
                {
                    Examiner = new ExaminerFacts([], SampleTime.Day),
                }
            ).Refusals
        );
        Assert.NotEmpty(
            Enter(
                TestKind.Hardness,
                new(Hardness: Traverse(null)),
                facts: Facts with
                {
                    Typed = new(LaboratoryTest.InstrumentField, "X-1", null),
                }
            ).Refusals
        );
    }

    [Fact]
    public void Test_ThatFails_OpensAFindingOnItsVessel_ButNotOnOneThatPassed()
    {
        var vessel = new SampleShop().Reach(50).Vessel;
        var own = Sample with { VesselSerial = vessel.Serial };
        var failed = Accept.Value(
            Enter(
                TestKind.Hardness,
                new(Hardness: Traverse("111")),
                facts: Facts with
                {
                    Vessel = vessel,
                },
                sample: own
            )
        );
        var passed = Accept.Value(
            Enter(
                TestKind.Hardness,
                new(Hardness: Traverse("100")),
                facts: Facts with
                {
                    Vessel = vessel,
                },
                sample: own
            )
        );

        Assert.Empty(passed.FindingsOn([vessel], SamplePeople.Inspector, SampleTime.Start));
        Assert.Equal(
            FindingOrigin.Examination,
            Assert
                .Single(failed.FindingsOn([vessel], SamplePeople.Inspector, SampleTime.Start))
                .Origin
        );
    }

    /// <summary>A stronger specimen never gets a worse verdict, and a wider uncertainty never makes a pass.</summary>
    [Fact]
    public void TensileVerdict_IsMonotone_AndUncertaintyMakesNoPass() =>
        Gen.Select(Gen.Int[1000, 4000], Gen.Int[0, 1000], Gen.Int[0, 50], Gen.Int[0, 50])
            .Sample(
                (force, more, uncertainty, wider) =>
                {
                    var weak = Judge(force, uncertainty);
                    var strong = Judge(force + more, uncertainty);
                    var wide = Judge(force, uncertainty + wider);
                    return (weak != Verdict.Pass || uncertainty > 0 || strong == Verdict.Pass)
                        && (strong != Verdict.Fail || weak == Verdict.Fail)
                        && (wide != Verdict.Pass || weak == Verdict.Pass);
                },
                iter: 500
            );

    private static Verdict Judge(int hundredthsOfKilonewtons, int uncertainty)
    {
        var series = Tensile("300", Text(uncertainty)) with
        {
            Specimens = [Row("T1", Text(hundredthsOfKilonewtons), "12.5", "6.0")],
        };
        return Accept.Value(Enter(TestKind.TransverseTensile, new(Tensile: series))).Verdict;
    }

    private static string Text(int hundredths) =>
        (hundredths / 100m).ToString("0.00", CultureInfo.InvariantCulture);

    private static LaboratoryFacts Facts { get; } =
        new(
            null,
            [],
            SampleTests.Examiner,
            new TypedInstrument(LaboratoryTest.InstrumentField, Machine.Mark, Machine)
        );

    private static LaboratorySample Sample { get; } =
        new(null, "L-7", "J1", "P1", "60 to 180 mm from the start", "WP-1 A", SampleTime.Day);

    private static Outcome<LaboratoryTest> Enter(
        TestKind kind,
        LaboratoryEntry entry,
        Actor? actor = null,
        LaboratoryFacts? facts = null,
        LaboratorySample? sample = null
    ) =>
        LaboratoryTest.Enter(
            Guid.CreateVersion7(SampleTime.Start),
            facts ?? Facts,
            sample ?? Sample,
            kind,
            new("ISO 4136", "2012", "DS-10", "B", "", SampleTime.Day, ""),
            entry,
            null,
            actor ?? SamplePeople.Inspector,
            SampleTime.Start
        );

    private static TensileSeries Tensile(string least, string forceUncertainty = "0") =>
        new(
            new(decimal.Parse(least, CultureInfo.InvariantCulture), "DS-10, section 6"),
            new("476", "MPa"),
            ParentReference.SamePlate,
            new(forceUncertainty, "kN"),
            new("0", "mm"),
            [
                Row("T1", "23.850", "12.5", "6.0"),
                Row("T2", "24.110", "12.48", "6.01"),
                Row("T3", "23.620", "12.51", "5.99"),
            ]
        );

    private static TensileRow Row(string mark, string force, string width, string thickness) =>
        new(
            mark,
            new(new(width, "mm"), new(thickness, "mm"), new(force, "kN"), FracturePlace.Nugget),
            null
        );

    private static BendSeries Bend(string former, string angle, string crack) =>
        new(
            new(36, "6 × t", 3),
            new("50", "mm"),
            [
                new(
                    "B1",
                    new("25", "mm"),
                    new("6", "mm"),
                    new(new(former, "mm"), new(angle, "°"), new(crack, "mm")),
                    "none"
                ),
            ]
        );

    private static HardnessSeries Traverse(string? least)
    {
        int[] places = [-20, -16, -12, -10, -8, -6, -4, -2, 0, 2, 4, 6, 8, 10, 12];
        int[] values = [152, 150, 141, 128, 116, 112, 121, 126, 128, 127, 123, 110, 114, 126, 140];
        return new(
            "HV 10",
            new("12", "s"),
            new("2", "mm"),
            new("151", "HV"),
            least is null ? null : new(least, "HV"),
            "block 1",
            [.. places.Zip(values, (p, v) => new HardnessRow(Of(p, "mm"), Of(v, "HV")))]
        );
    }

    private static Measured Of(int value, string unit) =>
        new(value.ToString(CultureInfo.InvariantCulture), unit);

    private static IEnumerable<string> Codes(Outcome<LaboratoryTest> outcome) =>
        outcome.Refusals.Select(r => r.Code);
}
