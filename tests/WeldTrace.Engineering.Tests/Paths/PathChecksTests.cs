using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Tests.Checks;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Engineering.Tests.Paths;

/// <summary>Every row of b_path.csv: plane geometry by two routes, sides by vector construction at eight points.</summary>
public sealed class PathChecksTests
{
    private static readonly CheckTable Table = new CheckTable("b_path.csv")
        .Number("B1", "path length", row => Layout(row).PathLength.Millimetres)
        .Number("B1", "overlap length", row => Layout(row).OverlapLength.Millimetres)
        .Number(
            "B1",
            "overlap angle",
            row => CircularPass.OverlapAngleOf(Mm(row["overlap_mm"]), Mm(row["R_mm"])).Degrees
        )
        .Number("B2", "rotary speed", row => Layout(row).RotaryAxisSpeed.RadiansPerSecond)
        .Number(
            "B2",
            "rotary axis speed in rev/min",
            row => Layout(row).RotaryAxisSpeed.RevolutionsPerMinute
        )
        .Number(
            "B2",
            "rotary axis speed in deg/s",
            row => Layout(row).RotaryAxisSpeed.RevolutionsPerSecond * 360
        )
        .Number(
            "B2",
            "feed at the outer shoulder edge path",
            row => Layout(row).FeedAtOuterEdge.MillimetresPerMinute
        )
        .Number(
            "B2",
            "feed at the inner shoulder edge path",
            row => Layout(row).FeedAtInnerEdge.MillimetresPerMinute
        )
        .Number("B3", "run time", row => Layout(row).RunTime.TotalSeconds)
        .Number("B3", "traverse time", row => Layout(row).TraverseTime.TotalSeconds)
        .Number("B3", "spindle revolutions during traverse", row => Layout(row).SpindleRevolutions)
        .Number(
            "B3",
            "traverse time with linear ramps",
            row => Layout(row).TraverseTime.TotalSeconds
        )
        .Number("B3", "weld position", row => Position(row).Distance.Millimetres)
        .Number("B3", "angular position", row => Position(row).Angle.Degrees)
        .Number("B3", "remaining length", row => Position(row).Remaining.Millimetres)
        .Number("B3", "sum of run lengths", TotalMetres)
        .Text(
            "B4",
            "advancing side seen in travel direction",
            row => Lower(AdvancingSide.OnLine(Sense(row, "spindle")))
        )
        .Text(
            "B5",
            "advancing side",
            row =>
                Lower(AdvancingSide.OnCircle(Sense(row, "spindle"), Sense(row, "travel_on_circle")))
        )
        .Text(
            "B5",
            "retreating side",
            row =>
                Lower(
                    AdvancingSide.Opposite(
                        AdvancingSide.OnCircle(
                            Sense(row, "spindle"),
                            Sense(row, "travel_on_circle")
                        )
                    )
                )
        )
        .Text("B6", "advancing side", AdvancingOverTurningWork)
        .Text("B7", "facing sides (pass 1 / pass 2)", FacingSides)
        .Number(
            "B8",
            "shoulder track gap (negative = overlap)",
            row => Pair(row).ShoulderTrackGap.Millimetres
        )
        .Number(
            "B8",
            "pin track gap (negative = overlap)",
            row => Pair(row).PinTrackGap.Millimetres
        )
        .Number("B8", "shoulder track gap", row => Pair(row).ShoulderTrackGap.Millimetres)
        .Number("B8", "pin track gap", row => Pair(row).PinTrackGap.Millimetres);

    public static TheoryData<int, string> Data => Table.Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void Path_CheckedRow_MatchesExpected(int index, string label)
    {
        Assert.Equal(label, Table.Rows[index].ToString());
        Table.Run(index);
    }

    private static CircularPassLayout Layout(CheckRow row)
    {
        var radius = row.Has("L_mm") ? row["L_mm"] / (2 * Math.PI) : row["R_mm"];
        var overlap = row.Has("L_mm") ? 0 : row.Or("overlap_deg", 0);
        return Passes.Layout(
            Passes.Usual with
            {
                TrackRadius = Mm(radius),
                OverlapAngle = Angle.FromDegrees(overlap),
                TravelSpeed = Speed.FromMillimetresPerMinute(row.Or("v_mm_min", 200)),
                SpindleSpeed = RotationSpeed.FromRevolutionsPerMinute(row.Or("n_rpm", 800)),
                ShoulderDiameter = Mm(2 * row.Or("R_shoulder_mm", 9)),
                PlungeDepth = Mm(row.Or("plunge_depth_mm", 5.9)),
                PlungeRate = Speed.FromMillimetresPerMinute(row.Or("plunge_rate_mm_min", 15)),
                DwellAtStart = TimeSpan.FromSeconds(row.Or("dwell_start_s", 0)),
                DwellAtEnd = TimeSpan.FromSeconds(row.Or("dwell_end_s", 0)),
                RampUp = TimeSpan.FromSeconds(row.Or("ramp_up_s", 0)),
                RampDown = TimeSpan.FromSeconds(row.Or("ramp_down_s", 0)),
                RetractDistance = Mm(row.Or("retract_mm", 10)),
                RetractRate = Speed.FromMillimetresPerMinute(row.Or("retract_rate_mm_min", 300)),
            }
        );
    }

    private static PathPosition Position(CheckRow row) =>
        Layout(row).PositionAfter(TimeSpan.FromSeconds(row["t_s"] - row["t_start_s"]));

    private static double TotalMetres(CheckRow row) =>
        ToolUsage
            .Compute(row.List("runs").Select(Mm), Length.FromMetres(100), Mm(500))
            .Value.Used.Metres;

    private static string AdvancingOverTurningWork(CheckRow row) =>
        Lower(
            AdvancingSide.OnCircle(
                Sense(row, "spindle"),
                AdvancingSide.TravelOverTurningWork(Sense(row, "work_rotation"))
            )
        );

    private static string FacingSides(CheckRow row)
    {
        var pair = ConcentricPair
            .Compare(
                Passes.Usual with
                {
                    SpindleSense = Sense(row, "spindle1"),
                    TravelSense = Sense(row, "travel1"),
                },
                Passes.Usual with
                {
                    TrackRadius = Mm(90),
                    SpindleSense = Sense(row, "spindle2"),
                    TravelSense = Sense(row, "travel2"),
                }
            )
            .Value;
        return $"{Short(pair.InnerPassShows)}/{Short(pair.OuterPassShows)}";
    }

    private static ConcentricPair Pair(CheckRow row)
    {
        CircularPass Of(string radius, string number) =>
            Passes.Usual with
            {
                TrackRadius = Mm(row[radius]),
                ShoulderDiameter = Mm(
                    row.Has("d_shoulder_mm") ? row["d_shoulder_mm"] : row[$"d_shoulder{number}_mm"]
                ),
                PinDiameter = Mm(row.Has("d_pin_mm") ? row["d_pin_mm"] : row[$"d_pin{number}_mm"]),
            };
        return ConcentricPair.Compare(Of("R1_mm", "1"), Of("R2_mm", "2")).Value;
    }

    private static RotationSense Sense(CheckRow row, string name) =>
        row.Text(name) == "CW" ? RotationSense.Clockwise : RotationSense.CounterClockwise;

    private static Length Mm(double value) => Length.FromMillimetres(value);

    private static string Short(WeldSide side) => side == WeldSide.Advancing ? "AS" : "RS";

    private static string Lower<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();
}
