using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Desk.PassLayout;

/// <summary>One circular pass, or two concentric ones: path, times, sides, ligament, exit hole.</summary>
public sealed class PassLayoutSubject : IDeskSubject
{
    private const string Second = "2";

    private static readonly IReadOnlyList<FieldOption> Senses =
    [
        new(nameof(RotationSense.Clockwise), "clockwise"),
        new(nameof(RotationSense.CounterClockwise), "counter-clockwise"),
    ];

    public string Path => Routes.DeskPassLayout;

    public string Title => "Pass layout";

    public string Purpose =>
        "Path, run time and rotary axis of one circular pass or two concentric ones, which side advances, and what lies between them.";

    public IReadOnlyList<DeskGroup> Groups { get; } =
    [
        new(
            "Tool and spindle",
            Millimetres("shoulder", "Shoulder diameter", "15"),
            Millimetres("pin", "Pin diameter", "6"),
            DeskField.Of<RotationSpeed>("spindle", "Spindle speed", "1000") with
            {
                Called = ["spindle speed"],
            },
            DeskField.Choice(
                "sense",
                "Spindle, seen from the shoulder side",
                nameof(RotationSense.Clockwise),
                Senses
            )
        ),
        Pass("1", "Pass 1, seen from the shoulder side", "60", nameof(RotationSense.Clockwise)),
        Pass(
            Second,
            "Pass 2, seen from the shoulder side (leave its radius empty for one pass)",
            "72",
            nameof(RotationSense.CounterClockwise)
        ),
        new(
            "Start and end of each pass",
            Millimetres("plunge", "Plunge depth", "4.5"),
            Feed("plungerate", "Plunge rate", "15", "plunge rate"),
            Seconds("dwell", "Dwell before travel", "5", "dwell at start"),
            Seconds("ramp", "Ramp to travel speed, and from it", "2", "ramp up time", "ramp times"),
            Seconds("enddwell", "Dwell after travel", "1", "dwell at end"),
            Millimetres("retract", "Retract distance", "10") with
            {
                Called = ["retract distance"],
            },
            Feed("retractrate", "Retract rate", "100", "retract rate")
        ),
    ];

    public Calculation? Calculate(DeskEntries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        List<CircularPassLayout> layouts = [];
        foreach (var pass in Passes(entries))
        {
            var suffix = pass.Number.ToString(CultureInfo.InvariantCulture);
            if (
                entries.AreClean
                && entries.Take(CircularPassLayout.Compute(pass), out var layout, suffix)
            )
            {
                layouts.Add(layout);
            }
        }

        var pair = Pair(entries, layouts);
        return !entries.AreClean
            ? null
            : new Calculation
            {
                Title = Title,
                Figures = [.. Figures(layouts, entries)],
                Statements = pair is null ? [] : [pair.Statement],
                Passes = new PassPlan("Joint", [.. layouts.Select(Track)]),
                Tables = [Table(layouts, entries)],
                Cautions = [DeskCautions.Spindle, DeskCautions.TestWelds],
            };
    }

    private static IEnumerable<CircularPass> Passes(DeskEntries entries)
    {
        yield return Read(entries, 1);
        if (!entries.IsEmpty("radius" + Second))
        {
            yield return Read(entries, 2);
        }
    }

    private static CircularPass Read(DeskEntries entries, int number)
    {
        var suffix = number.ToString(CultureInfo.InvariantCulture);
        var ramp = entries.Time("ramp");
        return new CircularPass
        {
            Number = number,
            TrackRadius = entries.Quantity<Length>("radius" + suffix),
            OverlapAngle = entries.Quantity<Angle>("overlap" + suffix),
            SpindleSense = entries.Choice<RotationSense>("sense"),
            TravelSense = entries.Choice<RotationSense>("travel" + suffix),
            TravelSpeed = entries.Quantity<Speed>("speed" + suffix),
            SpindleSpeed = entries.Quantity<RotationSpeed>("spindle"),
            PlungeDepth = entries.Quantity<Length>("plunge"),
            PlungeRate = entries.Quantity<Speed>("plungerate"),
            DwellAtStart = entries.Time("dwell"),
            DwellAtEnd = entries.Time("enddwell"),
            RampUp = ramp,
            RampDown = ramp,
            RetractDistance = entries.Quantity<Length>("retract"),
            RetractRate = entries.Quantity<Speed>("retractrate"),
            ShoulderDiameter = entries.Quantity<Length>("shoulder"),
            PinDiameter = entries.Quantity<Length>("pin"),
        };
    }

    private static ConcentricPair? Pair(DeskEntries entries, List<CircularPassLayout> layouts)
    {
        if (!entries.AreClean || layouts.Count < 2)
        {
            return null;
        }

        var ordered = layouts.Select(l => l.Pass).OrderBy(p => p.TrackRadius).ToList();
        return entries.Take(ConcentricPair.Compare(ordered[0], ordered[1]), out var pair, Second)
            ? pair
            : null;
    }

    private static IEnumerable<LabelledValue> Figures(
        IReadOnlyList<CircularPassLayout> layouts,
        DeskEntries entries
    )
    {
        var path = layouts.Aggregate(Length.Zero, (sum, l) => sum + l.PathLength);
        var time = layouts.Aggregate(TimeSpan.Zero, (sum, l) => sum + l.RunTime);
        yield return new("Metres charged to the tool", entries.Show(path, UnitScale.Path));
        yield return new("Time of all runs", Time(time));
    }

    private static CalculationTable Table(
        IReadOnlyList<CircularPassLayout> layouts,
        DeskEntries entries
    ) =>
        new(
            "Passes",
            [
                "Pass",
                "Path",
                "Overlap",
                "Run time",
                "Rotary axis",
                "Turns of the spindle",
                "Inner edge",
                "Outer edge",
                "Exit hole past the start",
            ],
            [
                .. layouts.Select(l =>
                    (IReadOnlyList<string>)
                        [
                            l.Pass.Number.ToString(CultureInfo.InvariantCulture),
                            entries.Show(l.PathLength),
                            entries.Show(l.OverlapLength),
                            Time(l.RunTime),
                            entries.Show(l.RotaryAxisSpeed, digits: 3),
                            SensibleDigits.Show(l.SpindleRevolutions),
                            Side(l, CircleEdge.Inner),
                            Side(l, CircleEdge.Outer),
                            entries.Show(l.ExitHoleAngle, digits: 3),
                        ]
                ),
            ]
        );

    private static PassTrack Track(CircularPassLayout layout) =>
        new()
        {
            Name = layout.Pass.Number.ToString(CultureInfo.InvariantCulture),
            TrackRadius = layout.Pass.TrackRadius,
            ShoulderDiameter = layout.Pass.ShoulderDiameter,
            PinDiameter = layout.Pass.PinDiameter,
            Spindle = layout.Pass.SpindleSense,
            Travel = layout.Pass.TravelSense,
            InnerSide = layout.SideAt(CircleEdge.Inner),
            OuterSide = layout.SideAt(CircleEdge.Outer),
            Overlap = layout.Pass.OverlapAngle,
        };

    private static DeskGroup Pass(string suffix, string legend, string radius, string travel) =>
        new(
            legend,
            Millimetres("radius" + suffix, $"Track radius, pass {suffix}", radius) with
            {
                Called = ["track radius"],
                Optional = suffix == Second,
            },
            DeskField.Of<Angle>("overlap" + suffix, $"Overlap, pass {suffix}", "20") with
            {
                Called = ["overlap angle"],
            },
            Feed("speed" + suffix, $"Travel speed, pass {suffix}", "200", "travel speed", "speeds"),
            DeskField.Choice("travel" + suffix, $"Travel, pass {suffix}", travel, Senses)
        );

    private static DeskField Millimetres(string name, string label, string initial) =>
        DeskField.Of<Length>(name, label, initial) with
        {
            // The library calls these as the labels do.
            Called = [char.ToLowerInvariant(label[0]) + label[1..]],
        };

    private static DeskField Feed(
        string name,
        string label,
        string initial,
        params IReadOnlyList<string> called
    ) => DeskField.Of<Speed>(name, label, initial) with { Called = called };

    private static DeskField Seconds(
        string name,
        string label,
        string initial,
        params IReadOnlyList<string> called
    ) => new(name, label, initial) { FixedUnit = "s", Called = called };

    private static string Time(TimeSpan time) =>
        time.TotalSeconds.ToString("0", CultureInfo.InvariantCulture) + " s";

    private static string Side(CircularPassLayout layout, CircleEdge edge) =>
        layout.SideAt(edge) == WeldSide.Advancing ? "advancing" : "retreating";
}
