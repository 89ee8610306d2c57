using System.Globalization;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Designs.Draw;

/// <summary>Reads the numbers of a typed design; what is no number is told with its place.</summary>
internal sealed class TypedDesign(DrawDesignForm form)
{
    private const int StepInterval = 10;

    public List<Refusal> Refusals { get; } = [];

    /// <summary>The design; null when something is no number.</summary>
    public DesignContent? Read()
    {
        var content = new DesignContent(
            Word(form.Alloy),
            Word(form.Temper),
            Length.FromMillimetres(
                Number(form.InnerDiameter, "Inner diameter", nameof(form.InnerDiameter))
            ),
            Length.FromMillimetres(
                Number(form.WallThickness, "Wall thickness", nameof(form.WallThickness))
            ),
            Volume.FromLitres(Number(form.Volume, "Volume", nameof(form.Volume))),
            Pressure.FromMegapascals(
                Number(form.AllowableStress, "Allowable stress", nameof(form.AllowableStress))
            ),
            [.. form.Joints.Where(j => !j.IsEmpty).Select(Joint)],
            Plan(),
            [.. form.Steps.Where(s => !s.IsEmpty).Select(Step)],
            InspectionDocumentWords.Read(form.RequiredDocument),
            Enum.TryParse<PedCategory>(form.PedCategory, out var category)
            && Enum.IsDefined(category)
                ? category
                : null,
            string.IsNullOrWhiteSpace(form.PedSource) ? null : form.PedSource.Trim()
        )
        {
            Samples = TypedSamples.Read(form.Samples, Refusals),
            Examinations = Examinations(),
            ProductionTests = form.ProductionTests.Read(Refusals),
        };
        return Refusals.Count == 0 ? content : null;
    }

    private PressurePlan Plan() =>
        new(
            Pressure.FromBar(Number(form.Meop, "Operating pressure", nameof(form.Meop))),
            Word(form.Medium),
            [.. form.Stages.Where(s => !s.IsEmpty).Select(Stage)],
            Word(form.FactorSource),
            (decimal)Number(
                form.TargetTolerance,
                "Tolerance on the stage pressures",
                nameof(form.TargetTolerance)
            ) / 100,
            Pressure.FromBar(
                Number(
                    form.AllowedHoldDrop,
                    "Permitted drop during a hold",
                    nameof(form.AllowedHoldDrop)
                )
            ),
            Length.FromMillimetres(
                Number(
                    form.AllowedPermanentSet,
                    "Permitted permanent set",
                    nameof(form.AllowedPermanentSet)
                )
            ),
            Pressure.FromBar(
                Number(form.LeakTestPressure, "Leak test pressure", nameof(form.LeakTestPressure))
            ),
            LeakRate.FromSi(
                Number(form.LeakRateLimit, "Greatest leak rate", nameof(form.LeakRateLimit))
            ),
            Whole(form.LeakHoldSeconds, "Leak test time", nameof(form.LeakHoldSeconds))
        )
        {
            Basis = form.Basis.IsEmpty ? null : Basis(form.Basis),
        };

    private LadderBasis Basis(BasisForm basis) =>
        new(
            basis.Rule,
            Decimal(basis.ProofFactor, "Proof factor") ?? 0,
            Decimal(basis.BurstFactor, "Burst factor") ?? 0,
            Megapascals(basis.LargestAllowable, 0.1, "PS"),
            Megapascals(basis.StrengthAtTest, 1, "Strength at test") ?? Pressure.Zero,
            Megapascals(basis.StrengthInService, 1, "Strength in service") ?? Pressure.Zero
        )
        {
            PermanentExpansionPercent = Decimal(
                basis.PermanentExpansion,
                "Permanent part of the expansion"
            ),
            Wall = string.IsNullOrWhiteSpace(basis.Ultimate)
                ? null
                : new WallStrength(
                    Megapascals(basis.Yield, 1, "Yield strength") ?? Pressure.Zero,
                    Megapascals(basis.Ultimate, 1, "Ultimate strength") ?? Pressure.Zero,
                    Decimal(basis.Hardening, "Hardening exponent") ?? 0,
                    Decimal(basis.WeldFactor, "Weld factor") ?? 1,
                    Word(basis.WallSource)
                ),
        };

    private Pressure? Megapascals(string? text, double factor, string what) =>
        Decimal(text, what) is { } value ? Pressure.FromMegapascals((double)value * factor) : null;

    private decimal? Decimal(string? text, string what) =>
        string.IsNullOrWhiteSpace(text) ? null : (decimal)Number(text, what, nameof(form.Basis));

    private PlannedMethod[]? Examinations()
    {
        PlannedMethod[] planned =
        [
            .. form
                .Examinations.Where(e => !e.IsEmpty)
                .Select(
                    (e, i) =>
                        new PlannedMethod(
                            string.IsNullOrWhiteSpace(e.Joint) ? null : e.Joint.Trim(),
                            e.Method,
                            (decimal)Number(
                                e.Extent,
                                $"Extent, test plan row {i + 1}",
                                nameof(form.Examinations)
                            ),
                            Word(e.MethodStandard),
                            Word(e.AcceptanceStandard),
                            Word(e.Level),
                            Enum.TryParse<PlannedExamination>(e.Replaces, out var replaced)
                                ? replaced
                                : null,
                            string.IsNullOrWhiteSpace(e.Clause) ? null : e.Clause.Trim()
                        )
                ),
        ];
        return planned.Length == 0 ? null : planned;
    }

    private Joint Joint(JointForm joint) =>
        new(
            Word(joint.Code),
            Word(joint.Name),
            Word(joint.JointType),
            Length.FromMillimetres(
                Number(
                    joint.Thickness,
                    $"Thickness of joint {Typed.Shorten(Word(joint.Code))}",
                    nameof(form.Joints)
                )
            ),
            Word(joint.ProcedureNumber),
            [
                .. form
                    .Passes.Where(p => !p.IsEmpty && Word(p.Joint) == Word(joint.Code))
                    .Select(
                        (p, i) =>
                            new PassPlan(
                                i + 1,
                                Length.FromMillimetres(
                                    Number(
                                        p.TrackRadius,
                                        $"Track radius, joint {Typed.Shorten(Word(joint.Code))} pass {i + 1}",
                                        nameof(form.Passes)
                                    )
                                ),
                                Angle.FromDegrees(
                                    Number(
                                        p.Overlap,
                                        $"Overlap, joint {Typed.Shorten(Word(joint.Code))} pass {i + 1}",
                                        nameof(form.Passes)
                                    )
                                ),
                                p.Travel,
                                Angle.FromDegrees(
                                    string.IsNullOrWhiteSpace(p.Start)
                                        ? 0
                                        : Number(
                                            p.Start,
                                            $"Start, joint {Typed.Shorten(Word(joint.Code))} pass {i + 1}",
                                            nameof(form.Passes)
                                        )
                                )
                            )
                    ),
            ]
        )
        {
            Class = Enum.TryParse<Domain.Procedures.JointClass>(joint.Class, out var weldClass)
                ? weldClass
                : null,
        };

    private PressureStage Stage(StageForm stage, int index) =>
        new(
            stage.Kind,
            (decimal)Number(stage.Factor, $"Factor of stage {index + 1}", nameof(form.Stages)),
            Whole(stage.HoldSeconds, $"Hold of stage {index + 1}", nameof(form.Stages)),
            string.IsNullOrWhiteSpace(stage.Rate)
                ? null
                : Pressure.FromBar(
                    Number(stage.Rate, $"Rate of stage {index + 1}", nameof(form.Stages))
                )
        );

    private RouteTemplateStep Step(StepForm step, int index) =>
        new(
            (index + 1) * StepInterval,
            step.Kind,
            Word(step.Title),
            string.IsNullOrWhiteSpace(step.Joint) ? null : step.Joint.Trim(),
            string.IsNullOrWhiteSpace(step.Pass)
                ? null
                : Whole(
                    step.Pass,
                    $"Pass of step {(index + 1) * StepInterval}",
                    nameof(form.Steps)
                ),
            step.Stop,
            Enum.TryParse<SampleKind>(step.OnlyFor, out var kind) && Enum.IsDefined(kind)
                ? kind
                : null
        );

    private double Number(string? text, string what, string field) =>
        (double)(Typed.Number(text, what, field, Refusals) ?? 0);

    private int Whole(string? text, string what, string field)
    {
        if (int.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out var value))
        {
            return value;
        }

        Refusals.Add(new Refusal("number", $"{what}: give a whole number.", field));
        return 0;
    }

    private static string Word(string? text) => text?.Trim() ?? "";
}
