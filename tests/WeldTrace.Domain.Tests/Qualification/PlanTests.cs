using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Qualification;

public sealed class PlanTests
{
    private static readonly ProcedureContent Butt = SampleProcedures.Content(
        SampleTools.Design()
    ) with
    {
        JointType = "butt",
        Details = new ProcedureDetails { PostWeld = PostWeldCondition.NaturalAgeing },
    };

    [Fact]
    public void Compute_ButtJoint_PlansBothEndsOfTheHeatInput_NASA_STD_5006A_GWR55()
    {
        var plan = Accept.Value(Compute(Butt));

        Assert.Collection(
            plan.Pieces,
            low =>
            {
                Assert.Equal(HeatEnd.Lowest, low.Heat);
                Assert.Equal((780m, 210m), Settings(low));
            },
            high =>
            {
                Assert.Equal(HeatEnd.Highest, high.Heat);
                Assert.Equal((820m, 190m), Settings(high));
            }
        );
    }

    [Fact]
    public void Compute_WindowsWithoutWidth_NeedOnePiece()
    {
        var plan = Accept.Value(
            Compute(
                Butt with
                {
                    Windows =
                    [
                        new(WeldParameter.SpindleSpeed, 800, 800, 800, "rev/min", true),
                        new(WeldParameter.TravelSpeed, 200, 200, 200, "mm/min", true),
                    ],
                }
            )
        );

        Assert.Equal(HeatEnd.Only, Assert.Single(plan.Pieces).Heat);
    }

    [Fact]
    public void Compute_ButtJoint_PlacesSpecimensOneAfterTheOtherClearOfTheEnds()
    {
        var plan = Accept.Value(Compute(Butt));
        var first = plan.Tests.Where(t => t.PieceMark == "1").ToList();

        // ISO 25239-4 5.3.1 (from memory): visual, 2 tensile, 2 root and 2 face bends below 12 mm, 1 macro.
        Assert.Equal(
            ["1-VT1", "1-T1", "1-T2", "1-RB1", "1-RB2", "1-FB1", "1-FB2", "1-MA1"],
            first.Select(t => t.Id)
        );
        Assert.Equal((50, 450), (first[0].FromMillimetres, first[0].ToMillimetres));
        var specimens = first.Skip(1).ToList();
        Assert.Equal(50, specimens[0].FromMillimetres);
        Assert.All(
            specimens.Zip(specimens.Skip(1)),
            pair => Assert.Equal(pair.First.ToMillimetres, pair.Second.FromMillimetres)
        );
        Assert.True(specimens[^1].ToMillimetres <= 450);
    }

    [Fact]
    public void Compute_PieceTooShort_SaysWhichLengthIsNeeded()
    {
        var plan = Compute(
            Butt,
            SampleQualifications.Request with
            {
                PieceLength = Length.FromMillimetres(300),
            }
        );

        // 2·50 + 4·40 + 20 = 280 mm of specimens, 380 mm with the ends; worked by hand.
        var refusal = Assert.Single(plan.Refusals);
        Assert.Equal("too-short", refusal.Code);
        Assert.Contains("380 mm", refusal.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2147483648, 50)]
    [InlineData(500, 1e12)]
    public void Compute_LengthsBeyondAllReckoning_AreRefused(double piece, double discard)
    {
        var outcome = Compute(
            Butt,
            SampleQualifications.Request with
            {
                PieceLength = Length.FromMillimetres(piece),
                Discard = Length.FromMillimetres(discard),
            }
        );

        Assert.Contains(outcome.Refusals, r => r.Field == nameof(PlanRequest.PieceLength));
    }

    [Fact]
    public void Compute_JointThatTheTableDoesNotName_IsRefused()
    {
        var plan = Compute(Butt with { JointType = "fillet" });

        Assert.Contains(plan.Refusals, r => r.Code == "extent");
    }

    [Fact]
    public void Compute_ExtraTests_AreAddedOnce()
    {
        var plan = Accept.Value(
            Compute(
                Butt,
                SampleQualifications.Request with
                {
                    Extra = [TestKind.Leak, TestKind.Hardness, TestKind.Visual],
                }
            )
        );

        Assert.Equal(
            ["1-VT1", "1-T1", "1-T2", "1-RB1", "1-RB2", "1-FB1", "1-FB2", "1-MA1", "1-L1", "1-H1"],
            plan.Tests.Where(t => t.PieceMark == "1").Select(t => t.Id)
        );
    }

    [Theory]
    [InlineData("6061", "T6", PostWeldCondition.NaturalAgeing, "310", 186.0)]
    [InlineData("6061", "T6", PostWeldCondition.ArtificialAgeing, "310", 217.0)]
    public void Compute_TensileRequirement_ExampleOf310MegapascalMinimum(
        string alloy,
        string temper,
        PostWeldCondition condition,
        string minimum,
        double required
    )
    {
        // Factors of EN 14532-3:2004 table 2: 0.6 × 310 = 186 MPa, 0.7 × 310 = 217 MPa.
        var plan = Accept.Value(
            Compute(
                Butt with
                {
                    Alloy = alloy,
                    Temper = temper,
                    Details = new ProcedureDetails { PostWeld = condition },
                },
                Request(minimum)
            )
        );

        Assert.Equal((decimal)required, plan.Tensile?.Megapascals);
    }

    [Theory]
    [InlineData("2219", "T87")]
    [InlineData("2195", "T8")]
    [InlineData("7075", "T6")]
    public void Compute_AlloyOutsideTheTable_NeedsTheDesignValueWithItsDocument(
        string alloy,
        string temper
    )
    {
        var content = Butt with { Alloy = alloy, Temper = temper };
        var former = SampleQualifications.Request with
        {
            DesignFormer = new Measured("20", "mm"),
            DesignFormerDocument = "DS-10, 4.2",
        };

        var without = Compute(content, former);
        var nameless = Compute(content, former with { Tensile = Design("250", null) });
        var with = Compute(content, former with { Tensile = Design("250", "DS-10, 4.1") });

        Assert.Equal(["tensile-design"], without.Refusals.Select(r => r.Code));
        Assert.Equal(["DesignDocument"], nameless.Refusals.Select(r => r.Field));
        Assert.Equal(250m, Accept.Value(with).Tensile?.Megapascals);
    }

    [Fact]
    public void Compute_JointOfTwoAlloys_TakesTheLowerRequirement_EN14532_3_6_2_4_1()
    {
        // 6061-T6: 0.6 × 260 = 156 MPa; 5083: 1.0 × 270 (O) = 270 MPa; the lower one governs.
        var content = Butt with
        {
            Details = new ProcedureDetails
            {
                PostWeld = PostWeldCondition.NaturalAgeing,
                Other = new OtherParent("5083", "H321", Length.FromMillimetres(3)),
            },
        };
        var request = SampleQualifications.Request with
        {
            Tensile = new TensileBasis(
                new("260", "MPa"),
                "EN 755-2",
                new("270", "MPa"),
                "EN 485-2",
                null,
                null
            ),
        };

        var plan = Accept.Value(Compute(content, request));

        Assert.Equal(156.0m, plan.Tensile?.Megapascals);
        Assert.Equal(
            ["OtherMinimum", "OtherMinimumSource"],
            Compute(content).Refusals.Select(r => r.Field).Order()
        );
    }

    [Theory]
    [InlineData("5754", "O", 9)]
    [InlineData("6061", "T6", 21)]
    public void Compute_Former_FollowsTheTable_BSEN288_4(string alloy, string temper, int largest)
    {
        // 3 t for 22.1 in O, 7 t for 23 in T6, at 3 mm.
        var plan = Accept.Value(Compute(Butt with { Alloy = alloy, Temper = temper }));

        Assert.Equal(largest, plan.Former?.Millimetres);
    }

    [Fact]
    public void Compute_SupersededTable_IsRefused()
    {
        var old = SampleLimits.Fresh().Single(t => t.Code == ShippedLimits.StrictRange);
        Accept.Value(old.Revise(old.Text, "again", SamplePeople.QualityManager, SampleTime.Start));

        var plan = PlanComputation.Compute(
            Butt,
            SampleQualifications.Request,
            SampleQualifications.Tables with
            {
                Range = old,
            }
        );

        Assert.Equal("superseded", Assert.Single(plan.Refusals).Code);
    }

    [Fact]
    public void Compute_Plan_NamesItsTablesAndThatTheyAreUnchecked()
    {
        var plan = Accept.Value(Compute(Butt));

        Assert.Equal(6, plan.Tables.Count);
        Assert.Equal(plan.Tables, plan.Unchecked);
    }

    private static Outcome<QualificationPlan> Compute(
        ProcedureContent content,
        PlanRequest? request = null
    ) =>
        PlanComputation.Compute(
            content,
            request ?? SampleQualifications.Request,
            SampleQualifications.Tables
        );

    private static PlanRequest Request(string minimum) =>
        SampleQualifications.Request with
        {
            Tensile = new TensileBasis(
                new(minimum, "MPa"),
                "material standard",
                null,
                null,
                null,
                null
            ),
        };

    private static TensileBasis Design(string value, string? document) =>
        new(null, null, null, null, new(value, "MPa"), document);

    private static (decimal? Spindle, decimal? Travel) Settings(PlannedPiece piece) =>
        (piece.Of(WeldParameter.SpindleSpeed)?.Value, piece.Of(WeldParameter.TravelSpeed)?.Value);
}
