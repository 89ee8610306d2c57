using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;
using Quantity = WeldTrace.Documents.QuantityText;

namespace WeldTrace.Documents.Traveler;

/// <summary>Figures of passes: a row for each figure, a column for each pass.</summary>
internal static class PassTable
{
    public static Table Of(PassPlan plan, IReadOnlyList<PassFigures> passes, UnitSystem units)
    {
        TableColumn[] columns =
        [
            new("Pass", 36),
            .. passes.Select(pass => new TableColumn(pass.Name, 30)),
        ];
        (PassFigures Pass, PassTrack? Track)[] pairs =
        [
            .. passes.Select(pass =>
                (pass, plan.Tracks.FirstOrDefault(track => track.Name == pass.Name))
            ),
        ];
        return new Table(
            columns,
            [
                .. Lines(units)
                    .Select(line => new TableRow([
                        new Cell(line.Label) { IsHead = true },
                        .. pairs.Select(pair => new Cell(line.Text(pair.Pass, pair.Track))),
                    ])),
            ]
        );
    }

    private static IEnumerable<(string Label, Func<PassFigures, PassTrack?, string?> Text)> Lines(
        UnitSystem units
    ) =>
        [
            ("Track radius", (_, track) => Quantity.Length(track?.TrackRadius, units)),
            ("Shoulder diameter", (_, track) => Quantity.Length(track?.ShoulderDiameter, units)),
            ("Pin diameter", (_, track) => Quantity.Length(track?.PinDiameter, units)),
            ("Path length", (pass, _) => Quantity.Path(pass.PathLength, units)),
            ("Overlap", (pass, track) => Overlap(pass, track, units)),
            ("Run time", (pass, _) => Quantity.Duration(pass.RunTime)),
            ("Spindle", (_, track) => track is null ? null : Quantity.Sense(track.Spindle)),
            ("Spindle speed", (pass, _) => Quantity.Rotation(pass.SpindleSpeed)),
            ("Travel", (_, track) => track is null ? null : Quantity.Sense(track.Travel)),
            ("Travel speed", (pass, _) => Quantity.Speed(pass.TravelSpeed, units)),
            ("Inner edge", (_, track) => track is null ? null : Quantity.Side(track.InnerSide)),
            ("Outer edge", (_, track) => track is null ? null : Quantity.Side(track.OuterSide)),
        ];

    private static string? Overlap(PassFigures pass, PassTrack? track, UnitSystem units)
    {
        var length = Quantity.Path(pass.OverlapLength, units);
        var angle = track is null ? null : Quantity.Degrees(track.Overlap);
        return (length, angle) switch
        {
            (null, _) => angle,
            (_, null) => length,
            _ => $"{length} ({angle})",
        };
    }
}

/// <summary>Explains the signs of the plan of passes.</summary>
internal static class PassLegend
{
    public const string Text =
        "Seen from the shoulder side, datum at the top. Filled spot: start; ring: exit hole; grey arc: overlap;"
        + " arrow on the track: travel; arrow in the tool: spindle. AS advancing, RS retreating side.";
}
