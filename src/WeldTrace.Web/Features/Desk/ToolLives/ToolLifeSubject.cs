using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Documents.Tools;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Desk.ToolLives;

/// <summary>Weibull life from tools that failed and tools that did not, and what it says of one tool.</summary>
public sealed class ToolLifeSubject : IDeskSubject
{
    private const string Example =
        "412 failed\n530 in use\n585 failed\n640 in use\n702 failed\n760 failed\n810 in use\n905 failed";

    public string Path => Routes.DeskToolLife;

    public string Title => "Tool life";

    public string Purpose =>
        "Weibull life of tools of one design from those that failed and those that still weld, and the chance that one tool survives its next pass and its next vessel.";

    public IReadOnlyList<DeskGroup> Groups { get; } =
    [
        new(
            "Tools of one design and one way to fail",
            new DeskField("tools", "Tools, one a line", Example)
            {
                Kind = FieldKind.TextArea,
                Hint = "Length welded in the unit of the path below, then 'failed' or 'in use'.",
                Called = ["shortest use", "longest use", "failed tools"],
            }
        ),
        new(
            "The tool in question",
            Metres("used", "Welded so far", "450", "metres used"),
            Metres("next", "Path of the next pass", "0.8", "next length"),
            new DeskField("passes", "Passes for the next vessel", "4")
        ),
        new(
            "Statement",
            Percent("chance", "Wanted chance of survival", "95", "wanted chance"),
            Percent("confidence", "Confidence of the bounds", "95", "confidence"),
            new DeskField("shape", "Shape to assume with few failures", "2")
            {
                Called = ["assumed shape"],
            }
        ),
    ];

    public Calculation? Calculate(DeskEntries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var records = PastedTools.Read(entries, "tools");
        var (used, next) = (entries.Quantity<Length>("used"), entries.Quantity<Length>("next"));
        var passes = entries.Whole("passes", 1, 1000);
        var (chance, confidence) = (
            entries.Part("chance", 0.01, 99.99),
            entries.Part("confidence", 1, 99.9)
        );
        var shape = entries.Number("shape");
        if (!entries.AreClean)
        {
            return null;
        }

        var fit = ToolLifeFit.Fit(records);
        var body = IsUnfitted(fit)
            ? Bound(entries, records, shape, confidence, fit)
            : Forecast(entries, fit, new LifeQuestion(used, next, chance, confidence), passes);
        return !entries.AreClean
            ? null
            : body with
            {
                Plot = new CalculationPlot(
                    "Weibull plot",
                    WeibullPlot.Of(records, fit.IsRefused ? null : fit.Value, used, entries.Units),
                    "Discs: failed tools. Rings on the axis: tools that did not fail. Line: fitted life. Dashed: the tool in question."
                ),
            };
    }

    // Too few failures are no fault of what was typed: there is still something to say.
    private static bool IsUnfitted(Computed<ToolLifeFit> fit) =>
        fit.Refusals is [{ Reason: RefusalReason.TooFewData }];

    private Calculation Bound(
        DeskEntries entries,
        IReadOnlyList<LifeRecord> records,
        double shape,
        double confidence,
        Computed<ToolLifeFit> fit
    )
    {
        IReadOnlyList<LabelledValue> figures = entries.Take(
            AssumedShapeLife.LowerScale(records, shape, confidence),
            out var bound
        )
            ? [new("Scale, lower bound", entries.Show(bound, UnitScale.Path))]
            : [];
        return new Calculation
        {
            Title = Title,
            Figures = figures,
            Statements =
            [
                .. fit.Refusals.Select(r => $"{r.What} {r.Mend}"),
                "The bound rests on an assumed shape, which needs a reason of its own; inspect the tool before each use.",
            ],
            Cautions = [DeskCautions.Spindle, DeskCautions.TestWelds],
        };
    }

    private Calculation Forecast(
        DeskEntries entries,
        Computed<ToolLifeFit> fit,
        LifeQuestion question,
        int passes
    )
    {
        if (
            !entries.Take(fit, out var life)
            || !entries.Take(LifeForecast.Compute(life, question), out var pass)
            || !entries.Take(
                LifeForecast.Compute(life, question with { Next = question.Next * passes }),
                out var vessel
            )
        )
        {
            return new Calculation { Title = Title };
        }

        var part = question.Confidence;
        return new Calculation
        {
            Title = Title,
            Figures =
            [
                new("Shape", SensibleDigits.Show(life.Shape, 3)),
                new("Scale", entries.Show(life.Scale, UnitScale.Path, 3)),
                new("Mean life of a new tool", entries.Show(life.MeanLife, UnitScale.Path, 3)),
                new("Mean further life", entries.Show(pass.MeanFurtherLife, UnitScale.Path, 3)),
                new(
                    $"Survived with {Percent(question.WantedChance)}",
                    entries.Show(pass.FurtherLife, UnitScale.Path, 3) + " more"
                ),
            ],
            Statements = [.. Statements(life, pass, vessel)],
            Tables =
            [
                new(
                    "Chance of survival",
                    ["Of", "Path", "Chance", $"At least, {Percent(part)} confidence"],
                    [
                        [
                            "the next pass",
                            entries.Show(pass.Question.Next, UnitScale.Path),
                            Chance(pass.Survives),
                            Chance(pass.SurvivesAtLeast),
                        ],
                        [
                            "the next vessel",
                            entries.Show(vessel.Question.Next, UnitScale.Path),
                            Chance(vessel.Survives),
                            Chance(vessel.SurvivesAtLeast),
                        ],
                    ]
                ),
                Bounds(entries, life, part),
            ],
            Cautions = [DeskCautions.Spindle, DeskCautions.TestWelds],
        };
    }

    private static CalculationTable Bounds(DeskEntries entries, ToolLifeFit life, double confidence)
    {
        var shape = life.ShapeLikelihoodInterval(confidence);
        var scale = life.ScaleLikelihoodInterval(confidence);
        return new(
            $"Likelihood-ratio bounds, {Percent(confidence)} two-sided",
            ["Of", "Lower", "Fitted", "Upper"],
            [
                [
                    "shape",
                    shape is { } s ? SensibleDigits.Show(s.Lower, 3) : "not bounded",
                    SensibleDigits.Show(life.Shape, 3),
                    shape is { } u ? SensibleDigits.Show(u.Upper, 3) : "not bounded",
                ],
                [
                    "scale",
                    scale is { } low ? entries.Show(low.Lower, UnitScale.Path, 3) : "not bounded",
                    entries.Show(life.Scale, UnitScale.Path, 3),
                    scale is { } high ? entries.Show(high.Upper, UnitScale.Path, 3) : "not bounded",
                ],
            ]
        );
    }

    private static IEnumerable<string> Statements(
        ToolLifeFit life,
        LifeForecast pass,
        LifeForecast vessel
    )
    {
        yield return FormattableString.Invariant(
            $"{life.Failures} of {life.Count} tools failed; the others count with what they have welded."
        );
        yield return life.Shape > 1
            ? "A shape above 1: the tools wear, and the chance to fail rises with the length welded."
            : "A shape of 1 or less: the tools do not wear out; retiring them early does not help.";
        if (pass.IsExtrapolated || vessel.IsExtrapolated)
        {
            yield return "The length asked for lies outside the lengths of the fitted tools: extrapolated. Inspect before each use.";
        }
    }

    private static string Chance(double part) =>
        part > 0.99995
            ? "> 99.99 %"
            : (part * 100).ToString("0.00", CultureInfo.InvariantCulture) + " %";

    private static string Percent(double part) =>
        (part * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %";

    private static DeskField Metres(
        string name,
        string label,
        string initial,
        params IReadOnlyList<string> called
    ) => DeskField.Of<Length>(name, label, initial, UnitScale.Path) with { Called = called };

    private static DeskField Percent(
        string name,
        string label,
        string initial,
        params IReadOnlyList<string> called
    ) => new(name, label, initial) { FixedUnit = "%", Called = called };
}
