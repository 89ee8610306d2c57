using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Engineering.Statistics;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Desk.Samples;

/// <summary>How many samples show what, and what a sample says of the whole.</summary>
public sealed class SampleSubject : IDeskSubject
{
    private const int MostValues = 500;

    private static readonly int[] Counts = [3, 4, 5, 6, 8, 10, 15, 20, 30, 50];
    private static readonly char[] Separators = [' ', '\t', '\r', '\n', ';'];

    public string Path => Routes.DeskSample;

    public string Title => "Tolerance and sample size";

    public string Purpose =>
        "How many tests without failure show a reliability, the tolerance factor of a sample, and the lower bound that measured values support.";

    public IReadOnlyList<DeskGroup> Groups { get; } =
    [
        new(
            "Statement",
            new DeskField("content", "Part of the population", "90")
            {
                FixedUnit = "%",
                Called = ["content", "reliability"],
                Hint = "That lies above the bound, or survives.",
            },
            new DeskField("confidence", "Confidence", "95")
            {
                FixedUnit = "%",
                Called = ["confidence"],
            },
            new DeskField("count", "Sample size", "6")
            {
                Called = ["sample size"],
                Hint = "Used when no values are given.",
            }
        ),
        new(
            "Values (may be left empty)",
            new DeskField("values", "Measured values, all in one unit", "118 121 116 124 119 122")
            {
                Kind = FieldKind.TextArea,
                Optional = true,
                Hint = "Burst pressures or strengths, for instance; parted by spaces or lines.",
                Called = ["standard deviation"],
            }
        ),
    ];

    public Calculation? Calculate(DeskEntries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var (content, confidence) = (
            entries.Part("content", 50, 99.99),
            entries.Part("confidence", 50, 99.99)
        );
        var values = Values(entries);
        var count = values.Count > 0 ? values.Count : entries.Whole("count", 2, 10_000);
        if (!entries.AreClean)
        {
            return null;
        }

        var isComputed =
            entries.Take(ToleranceFactor.TryOneSided(count, content, confidence), out var factor)
            & entries.Take(SuccessRun.Compute(content, confidence), out var trials);
        if (!isComputed)
        {
            return null;
        }

        IReadOnlyList<LabelledValue> bounds =
            values.Count > 0 ? [.. Bounds(entries, Sample.Of(values), factor!.Value)] : [];
        return !entries.AreClean
            ? null
            : new Calculation
            {
                Title = Title,
                Figures =
                [
                    new("Tests without failure", trials.ToString(CultureInfo.InvariantCulture)),
                    new("Sample size", count.ToString(CultureInfo.InvariantCulture)),
                    new("One-sided factor k, exact", SensibleDigits.Show(factor!.Value)),
                    .. bounds,
                ],
                Statements =
                [
                    "The factor holds for normal data: look for outliers and at the distribution first. Printed tables differ in the fourth digit.",
                ],
                Tables = [Factors(content, confidence)],
                Cautions = [DeskCautions.Decides],
            };
    }

    private static IEnumerable<LabelledValue> Bounds(
        DeskEntries entries,
        Sample sample,
        double factor
    )
    {
        yield return new("Mean", SensibleDigits.Show(sample.Mean));
        yield return new("Standard deviation", SensibleDigits.Show(sample.StandardDeviation, 3));
        yield return new(
            "Lower bound, mean − k·s",
            SensibleDigits.Show(
                ToleranceFactor.LowerLimit(sample.Mean, sample.StandardDeviation, factor)
            )
        );
        if (entries.Take(BasisValue.Normal(sample, Basis.B), out var basis))
        {
            yield return new("B-basis value, normal", SensibleDigits.Show(basis));
        }

        if (sample.Count >= 3 && entries.Take(Grubbs.Test(sample, 0.05), out var outlier))
        {
            yield return new(
                "Farthest value",
                outlier.IsOutlier ? "an outlier (5 %)" : "no outlier (5 %)"
            );
        }
    }

    private static List<double> Values(DeskEntries entries)
    {
        List<double> values = [];
        foreach (
            var text in entries
                .Text("values")
                .Split(Separators, StringSplitOptions.RemoveEmptyEntries)
        )
        {
            if (DeskField.TryRead(text, out var value) && Math.Abs(value) < 1e9)
            {
                values.Add(value);
            }
            else
            {
                entries.Refuse(
                    "values",
                    $"Measured values: '{DeskEntries.Shorten(text)}' is no number; write digits with a decimal point, parted by spaces."
                );
            }
        }

        if (values.Count is 1 or > MostValues)
        {
            entries.Refuse(
                "values",
                FormattableString.Invariant(
                    $"Measured values: give none, or 2 to {MostValues} of them."
                )
            );
        }

        return values;
    }

    private static CalculationTable Factors(double content, double confidence) =>
        new(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Factors for {content * 100:0.##} % of the population with {confidence * 100:0.##} % confidence"
            ),
            ["Sample size", "One-sided, exact", "Two-sided, Howe"],
            [
                .. Counts.Select(n =>
                    (IReadOnlyList<string>)
                        [
                            n.ToString(CultureInfo.InvariantCulture),
                            SensibleDigits.Show(ToleranceFactor.OneSided(n, content, confidence)),
                            SensibleDigits.Show(
                                ToleranceFactor.TwoSidedHowe(n, content, confidence)
                            ),
                        ]
                ),
            ]
        );
}
