using WeldTrace.Domain.Records;
using static WeldTrace.Domain.Limits.LimitEvidence;

namespace WeldTrace.Domain.Limits;

/// <summary>
/// The tables that come with the program: what was read in public sources, and what is from memory and said to be so. None of them
/// counts as checked until somebody of the site has compared it with an own copy of the source.
/// </summary>
public static class ShippedLimits
{
    /// <summary>Code of the rule set that is offered first.</summary>
    public const string StrictRange = "RANGE-STRICT";

    /// <summary>Code of the table of tensile factors.</summary>
    public const string Tensile = "TENSILE-14532";

    /// <summary>Code of the bend formers that are offered first.</summary>
    public const string Bend = "BEND-288";

    /// <summary>Code of the imperfection limits.</summary>
    public const string Imperfections = "IMPERF-25239";

    /// <summary>Code of the extent of testing that is offered first.</summary>
    public const string Extent = "EXTENT-25239";

    /// <summary>Code of the material groups.</summary>
    public const string Groups = "GROUPS-15608";

    /// <summary>Code of the material minima that are offered first.</summary>
    public const string Minima = "MINIMA-3AL";

    /// <summary>Code of the least examinations by class.</summary>
    public const string Examinations = "EXAM-5006A";

    private static readonly Shipped[] Tables =
    [
        new(
            Tensile,
            LimitKind.TensileFactors,
            ReadInSource,
            "Tensile factors of joints in aluminium",
            new("EN 14532-3", "2004", "table 2"),
            [
                "21 | any | any | 1.0 | O",
                "22 | any | any | 1.0 | O",
                "23.1 | T4 | natural ageing | 0.7 | actual",
                "23.1 | T4 | artificial ageing | 0.7 | T6",
                "23.1 | T5, T6 | natural ageing | 0.6 | actual",
                "23.1 | T5, T6 | artificial ageing | 0.7 | actual",
                "23.2 | T4 | natural ageing | 0.95 | actual",
                "23.2 | T4 | artificial ageing | 0.75 | T6",
                "23.2 | T6 | natural ageing | 0.75 | actual",
                "23.2 | T6 | artificial ageing | 0.75 | actual",
            ]
        ),
        new(
            "TENSILE-25239",
            LimitKind.TensileFactors,
            FromMemory,
            "Tensile factors of friction stir welds",
            new("ISO 25239-4", "2020", "5.3.3"),
            [
                "21 | any | any | 1.0 | O",
                "22 | any | any | 1.0 | O",
                "23.1 | T4 | natural ageing | 0.7 | actual",
                "23.1 | T4 | artificial ageing | 0.7 | T6",
                "23.1 | T5, T6 | natural ageing | 0.6 | actual",
                "23.1 | T5, T6 | artificial ageing | 0.7 | actual",
            ]
        ),
        new(
            Bend,
            LimitKind.BendFormers,
            ReadInSource,
            "Bend formers by group and temper",
            new("BS EN 288-4", "1992", "as reproduced in a handbook on the welding of aluminium"),
            [
                "21 | O | 2 | no",
                "21 | F, H112, H12, H22, H32 | 3 | no",
                "21 | H14, H24, H34 | 3 | no",
                "21 | H16, H26, H36 | 3 | no",
                "21 | H18, H28, H38 | 4 | no",
                "21 | H19, H29, H39 | 4 | no",
                "22.1 | O | 3 | no",
                "22.1 | F, H112, H12, H22, H32 | 3 | no",
                "22.1 | H14, H24, H34 | 3 | no",
                "22.1 | H16, H26, H36 | 4 | no",
                "22.1 | H18, H28, H38 | 5 | no",
                "22.1 | H19, H29, H39 | 5 | no",
                "22.2 | O, F, H112, H12, H22, H32, H14, H24, H34, H16, H26, H36 | 6 | no",
                "22.2 | H18, H28, H38, H19, H29, H39 | 6 | no",
                "23 | O | 4 | no",
                "23 | T4 | 6 | no",
                "23 | T5, T6 | 7 | no",
                "23 | T7 | 8 | no",
            ]
        ),
        new(
            "BEND-25239",
            LimitKind.BendFormers,
            FromMemory,
            "Bend former from the parent's elongation, 100·t/A − t",
            new("ISO 25239-4", "2020", "5.3.3"),
            ["any | any |  | yes"]
        ),
        new(
            Imperfections,
            LimitKind.Imperfections,
            FromMemory,
            "Imperfections of friction stir welds, the one level of 2011",
            new("ISO 25239-5", "2011", "annex A"),
            [
                "crack |  |  | 0 | 0 | ",
                "incomplete penetration |  |  | 0 | 0 | ",
                "excess penetration |  |  | 3 | 0 | ",
                "linear misalignment |  |  | 0 | 0.2 | 2",
                "underfill |  | 2 | 0 | 0.15 | ",
                "underfill | 2 |  | 0.2 | 0.1 | ",
                "cavity |  |  | 0 | 0.2 | 4",
                "crack on a bend test's tension face |  |  | 3 | 0 | ",
            ]
        ),
        new(
            Extent,
            LimitKind.ExtentOfTesting,
            FromMemory,
            "Tests of a procedure qualification",
            new("ISO 25239-4", "2020", "5.3.1"),
            [
                "butt | any | visual | 1 |  | ",
                "butt | any | transverse tensile | 2 |  | ",
                "butt | any | root bend | 2 |  | 12",
                "butt | any | face bend | 2 |  | 12",
                "butt | any | side bend | 4 | 12 | ",
                "butt | any | macro section | 1 |  | ",
                "lap | any | visual | 1 |  | ",
                "lap | any | macro section | 1 |  | ",
            ]
        ),
        new(
            "EXTENT-288",
            LimitKind.ExtentOfTesting,
            ReadInSource,
            "Tests of a procedure qualification, arc welding, for comparison",
            new("BS EN 288-4", "1992", "as reproduced in a handbook on the welding of aluminium"),
            [
                "butt | any | visual | 1 |  | ",
                "butt | any | radiographic or ultrasonic | 1 |  | ",
                "butt | any | penetrant | 1 |  | ",
                "butt | any | transverse tensile | 2 |  | ",
                "butt | any | root bend | 2 |  | 12",
                "butt | any | face bend | 2 |  | 12",
                "butt | any | side bend | 4 | 12 | ",
                "butt | any | macro section | 1 |  | ",
                "butt | 22, 23 | micro section | 1 |  | ",
            ]
        ),
        new(
            StrictRange,
            LimitKind.QualificationRange,
            ReadInSource,
            "Exactly what was tested",
            new(
                "Ship classification, rules for manufacture, testing and certification of materials",
                "July 2022",
                "Ch. 12, 6.3.7"
            ),
            [
                "alloy and temper | as tested | any |  |  |  |  |  | ",
                "thickness | as tested | any |  |  |  |  |  | ",
                "joint type | as tested | any |  |  |  |  |  | ",
                "tool design | as tested | any |  |  |  |  |  | ",
                "other essential variables | as tested | any |  |  |  |  |  | ",
            ]
        ),
        new(
            "RANGE-288",
            LimitKind.QualificationRange,
            ReadInSource,
            "Ranges of arc welding, for comparison",
            new("BS EN 288-4", "1992", "as reproduced in a handbook on the welding of aluminium"),
            [
                "alloy and temper | material group | any |  |  |  |  |  | ",
                "thickness | range | one |  |  | 0.8 |  | 1.1 | ",
                "thickness | range | several |  | 3 | 1 |  | 2 | ",
                "thickness | range | several | 3 | 12 |  | 3 | 2 | ",
                "thickness | range | several | 12 | 100 | 0.5 |  | 2 | 150",
                "thickness | range | several | 100 |  | 0.5 |  | 1.5 | ",
            ]
        ),
        new(
            Groups,
            LimitKind.MaterialGroups,
            FromMemory,
            "Groups of aluminium alloys",
            new("ISO/TR 15608", "2017", "table for aluminium"),
            [
                "1050, 1070, 1080, 1100, 1200, 1350 | 21",
                "3003, 3004, 3103, 3105, 5005, 5049, 5050, 5052, 5154, 5251, 5454, 5754 | 22.1",
                "5083, 5086, 5182, 5383, 5456 | 22.2",
                "6005A, 6060, 6061, 6063, 6082, 6106, 6351 | 23.1",
                "7003, 7005, 7020 | 23.2",
            ]
        ),
        // 38 000 and 35 000 psi; 14 % on a 2 in or 4D specimen, 10 % permitted on 24t × 6t where the wall is at most 3/16 in.
        new(
            Minima,
            LimitKind.MaterialMinima,
            ReadInSource,
            "Minima of 6061-T6 for seamless cylinders",
            new("49 CFR", "2005", "178.46 table 2"),
            ["6061 | T6 | any |  |  | 262.0 | 241.3 | 14"]
        ),
        // Visual and dimensional for all, surface for A and B, volumetric for A, for B where the drawing asks.
        new(
            Examinations,
            LimitKind.LeastExaminations,
            ReadInSource,
            "Least examinations of a weld by its class",
            new("NASA-STD-5006A", "change 2", "figure 5"),
            [
                "A | visual | visual | none",
                "A | dimensional | dimensional | none",
                "A | surface | penetrant | none",
                "A | volumetric | radiographic | ultrasonic",
                "B | visual | visual | none",
                "B | dimensional | dimensional | none",
                "B | surface | penetrant | none",
                "C | visual | visual | none",
                "C | dimensional | dimensional | none",
            ]
        ),
    ];

    /// <summary>The table of least examinations as it comes with the program; for designs drawn before it was a table.</summary>
    public static LimitText LeastExaminations => Tables.Single(t => t.Code == Examinations).Text;

    /// <summary>Makes the first edition of each table that isn't there yet.</summary>
    /// <param name="existingCodes">Codes of tables that exist.</param>
    /// <param name="actor">Who sets up the site.</param>
    /// <param name="at">UTC instant.</param>
    public static IReadOnlyList<LimitTable> Missing(
        IReadOnlyCollection<string> existingCodes,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(existingCodes);
        return
        [
            .. Tables
                .Where(t => !existingCodes.Contains(t.Code))
                .Select(t =>
                    LimitTable.Make(
                        t.Code,
                        1,
                        t.Kind,
                        t.Text,
                        t.Evidence,
                        "comes with the program",
                        actor,
                        at
                    )
                ),
        ];
    }

    private static IReadOnlyList<string> Cells(string row) =>
        [.. row.Split('|', StringSplitOptions.TrimEntries)];

    private sealed record Shipped(
        string Code,
        LimitKind Kind,
        LimitEvidence Evidence,
        string Title,
        LimitSource Source,
        IReadOnlyList<string> Rows
    )
    {
        public LimitText Text => new(Title, Source, [.. Rows.Select(Cells)]);
    }
}
