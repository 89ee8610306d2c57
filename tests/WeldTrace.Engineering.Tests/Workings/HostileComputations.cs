using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;
using WeldTrace.Engineering.Tests.Paths;
using WeldTrace.Engineering.TestSafety;
using WeldTrace.Engineering.ToolLife;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Engineering.Tests.Workings;

/// <summary>Every computation, fed with six numbers: whether it refuses them. A result must have something to show.</summary>
internal static class HostileComputations
{
    private static readonly WrittenLimit Rate = WrittenLimit.Parse("1.0E-3", "Pa m3/s");

    public static readonly Dictionary<string, Func<double[], bool>> All = new()
    {
        ["pass layout"] = x => Refuses(CircularPassLayout.Compute(Pass(x))),
        ["concentric passes"] = x => Refuses(ConcentricPair.Compare(Passes.Usual, Pass(x))),
        ["kinematics"] = x =>
            Refuses(WeldKinematics.Compute(Spin(x[0]), Feed(x[1]), Long(x[2]), Long(x[3]))),
        ["power"] = x =>
            Refuses(
                PowerInput.Compute(
                    Spin(x[0]),
                    Torque.FromSi(x[1]),
                    Feed(x[2]),
                    x[3],
                    Force.FromSi(Math.Clamp(x[4], -1e20, 1e20))
                )
            ),
        ["heat index"] = x =>
            Refuses(HeatIndex.Compute(Spin(x[0]), Feed(x[1]), Hot(x[2]), Hot(x[3]))),
        ["heat"] = x =>
            Refuses(
                AnalyticHeat.Compute(
                    new(Long(x[0]), Long(x[1]), Long(x[2]), Angle.FromSi(x[3])),
                    Spin(x[4]),
                    Press(x[5])
                )
            ),
        ["moving source"] = x =>
            Refuses(
                MovingSource.Compute(
                    Power.FromSi(x[0]),
                    Feed(x[1]),
                    new(x[2], x[3], x[4]),
                    Long(x[5]),
                    new(Long(0), Long(0.02), Long(0)),
                    Long(0.01)
                )
            ),
        ["thin wall"] = x => Refuses(ThinWallStress.Compute(Press(x[0]), Long(x[1]), Long(x[2]))),
        ["thick cylinder"] = x =>
            Refuses(ThickCylinderStress.Compute(Press(x[0]), Press(x[1]), Long(x[2]), Long(x[3]))),
        ["thick sphere"] = x =>
            Refuses(ThickSphereStress.Compute(Press(x[0]), Long(x[1]), Long(x[2]))),
        ["margin"] = x => Refuses(MarginOfSafety.Compute(Press(x[0]), Press(x[1]), x[2])),
        ["hoop"] = x => Refuses(AsmeThickness.CylinderHoop(Design(x))),
        ["axial"] = x => Refuses(AsmeThickness.CylinderAxial(Design(x))),
        ["thick"] = x => Refuses(AsmeThickness.CylinderThick(Design(x))),
        ["mean diameter"] = x => Refuses(EnThickness.Cylinder(Design(x))),
        ["shapes"] = x => Refuses(ShapeComparison.Compute(Vol(x[4]), Design(x), x[5])),
        ["cylinder burst"] = x =>
            Refuses(
                CylinderBurst.Compute(
                    new(Press(x[0]), Press(x[1]), x[2], x[3]),
                    Long(x[4]),
                    Long(x[5])
                )
            ),
        ["sphere burst"] = x =>
            Refuses(
                SphereBurst.Compute(
                    new(Press(x[0]), Press(x[1]), x[2], x[3]),
                    Long(x[4]),
                    Long(x[5])
                )
            ),
        ["wall of cylinders"] = x =>
            Refuses(GasCylinderRules.WallIso7866(Long(x[0]), Press(x[1]), Press(x[2]), x[3])),
        ["wall stress"] = x =>
            Refuses(GasCylinderRules.WallStress3Al(Press(x[0]), Long(x[1]), Long(x[2]))),
        ["ladder"] = x =>
            Refuses(PressureLadder.Compute(Press(x[0]), new(x[1], x[2], "invented", x[3]))),
        ["growth"] = x =>
            Refuses(
                ElasticExpansion.Compute(
                    Press(x[0]),
                    Press(x[1]),
                    x[2],
                    Long(x[3]),
                    Long(x[4]),
                    Vol(x[5])
                )
            ),
        ["decay"] = x => Refuses(PressureDecay.Evaluate(Decay(x, DecayMethod.TwoPoint))),
        ["decay fit"] = x => Refuses(PressureDecay.Evaluate(Decay(x, DecayMethod.LeastSquares))),
        ["sensitivity"] = x =>
            Refuses(
                DecaySensitivity.Compute(
                    Vol(x[0]),
                    Press(x[1]),
                    Hot(x[2]),
                    Time(x[3]),
                    new(Vol(0), Press(x[4]), x[5], default)
                )
            ),
        ["leak conversion"] = x =>
            Refuses(
                LeakConversion.Compute(
                    LeakRate.FromSi(1e-3),
                    new(TestGas.Helium, Press(x[0]), Press(x[1])),
                    new(new("gas", x[4], x[5]), Press(x[2]), Press(x[3]))
                )
            ),
        ["bubbles"] = x =>
            Refuses(
                BubbleImmersion.Evaluate(
                    new(
                        Long(x[0]),
                        Long(x[1]),
                        (int)Math.Clamp(x[2], -5, 1e9),
                        Time(x[3]),
                        Press(x[4])
                    ),
                    Rate
                )
            ),
        ["hold"] = x => Refuses(HoldEvaluation.Evaluate(Hold(x))),
        ["set"] = x =>
            Refuses(
                PermanentSet.Evaluate(
                    new(
                        "length",
                        Long(x[0]),
                        Long(x[1]),
                        Long(x[2]),
                        WrittenLimit.Parse("0.1", "%")
                    )
                )
            ),
        ["burst ratio"] = x =>
            Refuses(
                BurstRatio.Evaluate(
                    Press(x[0]),
                    Press(x[1]),
                    Press(x[2]),
                    WrittenLimit.Parse("1.5", "")
                )
            ),
        ["expansion"] = x =>
            Refuses(
                VolumetricExpansion.Evaluate(
                    Vol(x[0]),
                    Vol(x[1]),
                    x[2],
                    WrittenLimit.Parse("10", "%")
                )
            ),
        ["stages"] = x =>
            Refuses(
                StagePlan.Compute([
                    new("a", Press(x[0]), Press(x[1]), Time(x[2])),
                    new("b", Press(x[3]), Press(x[4]), Time(x[5])),
                ])
            ),
        ["gas energy"] = x =>
            Refuses(GasEnergy.Compute(new(Press(x[0]), Press(x[1]), Vol(x[2]), x[3]))),
        ["liquid energy"] = x =>
            Refuses(LiquidEnergy.Compute(Press(x[0]), Vol(x[1]), x[2], Vol(x[3]))),
        ["stand-off"] = x =>
            Refuses(StandOff.Compute(Energy.FromSi(x[0]), StandOffRule.Pcc2Of2022)),
        ["usage"] = x =>
            Refuses(ToolUsage.Compute([Long(x[0]), Long(x[1])], Long(x[2]), Long(x[3]))),
        ["tool life"] = x =>
            Refuses(
                ToolLifeFit.Fit([.. x.Select((value, i) => new LifeRecord(Long(value), i < 4))])
            ),
        ["assumed shape"] = x =>
            Refuses(
                AssumedShapeLife.LowerScale(
                    [new(Long(x[0]), true), new(Long(x[1]), false)],
                    x[2],
                    x[3]
                )
            ),
        ["wear"] = x =>
            Refuses(
                WearTrend.Fit(
                    [
                        new(Long(x[0]), Long(x[1])),
                        new(Long(x[2]), Long(x[3])),
                        new(Long(x[4]), Long(x[5])),
                    ],
                    Long(1e-4)
                )
            ),
        ["efficiency"] = x =>
            Refuses(
                JointEfficiency.Compute(
                    [new(Force.FromSi(x[0]), Long(x[1]), Long(x[2]))],
                    Press(x[3]),
                    ParentReference.SamePlate,
                    WrittenLimit.Parse("0.6", "")
                )
            ),
        ["hardness"] = x =>
            Refuses(
                HardnessTraverse.Compute(
                    [new(Long(-1), x[0]), new(Long(0), x[1]), new(Long(1), x[2])],
                    x[3]
                )
            ),
        ["individuals"] = x => Refuses(IndividualsChart.Compute(x)),
        ["capability"] = x => Refuses(Capability.Compute(new(x[0], x[1], x[2]), x[3], x[4], 10)),
        ["tolerance factor"] = x =>
            Refuses(ToleranceFactor.TryOneSided((int)Math.Clamp(x[0], -5, 1e6), x[1], x[2])),
    };

    private static bool Refuses<T>(Computed<T> result)
        where T : notnull
    {
        Assert.Equal(result.IsRefused, !result.TryGet(out _));
        return result.IsRefused
            ? result.Refusals.All(refusal => refusal.Mend.Length > 0)
            : result.Working.Results.Count < 0;
    }

    private static CircularPass Pass(double[] x) =>
        Passes.Usual with
        {
            TrackRadius = Long(x[0]),
            OverlapAngle = Angle.FromSi(x[1]),
            TravelSpeed = Feed(x[2]),
            PlungeRate = Feed(x[3]),
            ShoulderDiameter = Long(x[4]),
            PinDiameter = Long(x[5]),
        };

    private static DecayTest Decay(double[] x, DecayMethod method) =>
        new()
        {
            Volume = Vol(x[0]),
            Readings =
            [
                new(Time(0), Press(x[1]), Hot(x[2])),
                new(Time(60), Press(x[3]), Hot(293)),
                new(Time(x[4]), Press(x[1]), Hot(x[5])),
            ],
            Uncertainty = new(Vol(1e-6), Press(20), 0.1, Time(1)),
            Method = method,
            Limit = Rate,
        };

    private static HoldTest Hold(double[] x) =>
        new()
        {
            Medium = TestMedium.Gas,
            Readings =
            [
                new(Time(0), Press(x[0]), Hot(x[1])),
                new(Time(x[2]), Press(x[3]), Hot(x[4])),
            ],
            PressureUncertainty = Press(x[5]),
            TemperatureUncertaintyKelvin = 0.1,
            AllowedDrop = WrittenLimit.Parse("1.0", "bar"),
            RequiredHold = Time(60),
        };

    private static DesignCase Design(double[] x) => new(Press(x[0]), Long(x[1]), Press(x[2]), x[3]);

    private static Length Long(double x) => Length.FromSi(x);

    private static Pressure Press(double x) => Pressure.FromSi(x);

    private static Speed Feed(double x) => Speed.FromSi(x);

    private static RotationSpeed Spin(double x) => RotationSpeed.FromSi(x);

    private static Volume Vol(double x) => Volume.FromSi(x);

    private static Temperature Hot(double x) => Temperature.FromSi(Math.Abs(x));

    private static TimeSpan Time(double seconds) =>
        TimeSpan.FromSeconds(Math.Clamp(seconds, -1e9, 1e9));
}
