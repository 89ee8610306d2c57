using System.Globalization;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Qualification;

/// <summary>Computes what a qualification needs from the joint and the tables.</summary>
public static class PlanComputation
{
    private const string BendCrack = "crack on a bend test's tension face";
    internal const int LongestPieceMillimetres = 10000;

    private static readonly TestKind[] Bends =
    [
        TestKind.RootBend,
        TestKind.FaceBend,
        TestKind.SideBend,
    ];

    /// <summary>The plan, or everything that keeps it from being made.</summary>
    public static Outcome<QualificationPlan> Compute(
        ProcedureContent content,
        PlanRequest request,
        PlanTables tables
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(tables);
        var checks = new Checks();
        CheckRequest(checks, request, tables);
        var needed = Needed(checks, content, request, tables);
        var pieces = Pieces(content);
        var tests = SpecimenLayout.Place(checks, pieces, needed, request);
        var hasBends = needed.Any(n => Bends.Contains(n.Kind));
        var tensile = needed.Any(n => n.Kind == TestKind.TransverseTensile)
            ? TensileRequirement.Of(content, request.Tensile, tables.Groups, tables.Tensile)
            : null;
        checks.Add(tensile?.Refusals ?? []);
        var former = hasBends ? Former(checks, content, request, tables) : null;
        return checks.AllHold
            ? new QualificationPlan(
                pieces,
                tests,
                request.PieceLength,
                request.Discard,
                tensile?.Value,
                former,
                hasBends
                    ? ImperfectionLimits.Of(tables.Imperfections, BendCrack, content.Thickness) ?? 0
                    : null,
                [.. tables.All.Select(t => t.Reference)]
            )
            : checks.Refusals;
    }

    /// <summary>One piece at each end of the heat input; one alone when the windows have no width.</summary>
    private static IReadOnlyList<PlannedPiece> Pieces(ProcedureContent content)
    {
        var spindle = content.WindowOf(WeldParameter.SpindleSpeed)!;
        var travel = content.WindowOf(WeldParameter.TravelSpeed)!;
        return spindle.Lower == spindle.Upper && travel.Lower == travel.Upper
            ? [Piece("1", HeatEnd.Only, spindle.SetPoint, travel.SetPoint)]
            :
            [
                Piece("1", HeatEnd.Lowest, spindle.Lower, travel.Upper),
                Piece("2", HeatEnd.Highest, spindle.Upper, travel.Lower),
            ];

        PlannedPiece Piece(string mark, HeatEnd heat, decimal rotation, decimal speed) =>
            new(
                mark,
                heat,
                [
                    new(WeldParameter.SpindleSpeed, rotation, spindle.Unit),
                    new(WeldParameter.TravelSpeed, speed, travel.Unit),
                ]
            );
    }

    private static void CheckRequest(Checks checks, PlanRequest request, PlanTables tables)
    {
        checks
            .That(
                request.PieceLength.Millimetres is > 0 and <= LongestPieceMillimetres,
                "length",
                $"Give the length of the weld on a test piece, above 0 and at most {LongestPieceMillimetres} mm.",
                nameof(request.PieceLength)
            )
            .That(
                request.Discard.Millimetres >= 0,
                "discard",
                "Give the length at both ends that is discarded, zero or more.",
                nameof(request.Discard)
            )
            .That(
                request.Volumetric is TestKind.Radiographic or TestKind.Ultrasonic,
                "volumetric",
                "Choose radiographic or ultrasonic testing.",
                nameof(request.Volumetric)
            );
        foreach (var old in tables.All.Where(t => t.SupersededById is not null))
        {
            checks.That(
                false,
                "superseded",
                $"{old.Label} has a later edition; plan by that one.",
                old.Covers.ToString()
            );
        }
    }

    private static IReadOnlyList<(TestKind Kind, int Number)> Needed(
        Checks checks,
        ProcedureContent content,
        PlanRequest request,
        PlanTables tables
    )
    {
        var listed = ExtentOfTesting.Of(
            tables.Extent,
            content.JointType,
            MaterialGroups.Of(tables.Groups, content.Alloy),
            content.Thickness
        );
        checks.That(
            listed.Count > 0,
            "extent",
            $"{tables.Extent.Label} has no row for a {content.JointType} joint; choose another table, or have the quality manager enter one.",
            nameof(LimitKind.ExtentOfTesting)
        );
        var kinds = listed
            .Select(n => (Kind: TestKinds.Named(n.Test, request.Volumetric), n.Number))
            .ToList();
        return
        [
            .. kinds,
            .. request.Extra.Where(e => kinds.All(k => k.Kind != e)).Distinct().Select(e => (e, 1)),
        ];
    }

    private static FormerRequirement? Former(
        Checks checks,
        ProcedureContent content,
        PlanRequest request,
        PlanTables tables
    )
    {
        if (request.DesignFormer is { } design)
        {
            checks.Text(
                request.DesignFormerDocument,
                TensileBasis.LongestText,
                "Name the design specification of the former with its clause",
                nameof(request.DesignFormerDocument)
            );
            return new FormerRequirement(
                decimal.Parse(design.Digits, CultureInfo.InvariantCulture),
                $"design specification {request.DesignFormerDocument}"
            );
        }

        var group = MaterialGroups.Of(tables.Groups, content.Alloy);
        var rule = BendFormers.Find(tables.Bend, group, content.Temper);
        var diameter = rule?.Diameter(content.Thickness.Millimetres, request.Elongation?.InUnit());
        checks.That(
            diameter is not null,
            "former",
            $"{tables.Bend.Label} gives no former for {content.Alloy}-{content.Temper}; enter the least elongation of the parent (above 5 %) where the former follows from it, or the former of the design specification with its document.",
            nameof(request.DesignFormer),
            tables.Bend.Text.Source.ToString()
        );
        return diameter is { } millimetres
            ? new FormerRequirement(
                Math.Round((decimal)millimetres, 1),
                FormattableString.Invariant(
                    $"{tables.Bend.Label}, {content.Thickness.Millimetres:0.###} mm"
                )
            )
            {
                TimesThickness = rule!.TimesThickness,
                ElongationPercent = rule.TimesThickness is null
                    ? decimal.Parse(request.Elongation!.Digits, CultureInfo.InvariantCulture)
                    : null,
            }
            : null;
    }
}
