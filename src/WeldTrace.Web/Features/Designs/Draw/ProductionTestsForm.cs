using System.Globalization;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Designs.Draw;

/// <summary>When production tests fall due, as typed; without what is tested, none are asked for.</summary>
public sealed class ProductionTestsForm
{
    private const string Field = nameof(DrawDesignForm.ProductionTests);
    private const int MostHours = 100_000;

    public string? Asks { get; set; }

    public string? EveryWelded { get; set; }

    public string? EveryHours { get; set; }

    public bool AfterToolChange { get; set; }

    public bool AfterMachineWork { get; set; }

    public bool AfterDeviation { get; set; }

    public bool AfterDefect { get; set; }

    public string? Source { get; set; }

    internal ProductionTestRule? Read(List<Refusal> refusals)
    {
        if (string.IsNullOrWhiteSpace(Asks))
        {
            return null;
        }

        var length = Optional(EveryWelded, "Length between production tests");
        var hours = Optional(EveryHours, "Hours between production tests");
        return new ProductionTestRule(
            length is { } metres ? Length.FromMetres((double)metres) : null,
            Whole(hours, refusals),
            AfterToolChange,
            AfterMachineWork,
            AfterDeviation,
            AfterDefect,
            Asks.Trim(),
            Source?.Trim() ?? ""
        );

        decimal? Optional(string? text, string what) =>
            string.IsNullOrWhiteSpace(text) ? null : Typed.Number(text, what, Field, refusals);
    }

    private static int? Whole(decimal? hours, List<Refusal> refusals)
    {
        if (hours is null || Math.Abs(hours.Value) <= MostHours)
        {
            return hours is { } whole ? (int)Math.Round(whole) : null;
        }

        refusals.Add(
            new("number", $"Hours between production tests: give up to {MostHours} hours.", Field)
        );
        return null;
    }

    internal static ProductionTestsForm Of(ProductionTestRule? rule) =>
        rule is null
            ? new()
            : new()
            {
                Asks = rule.Asks,
                EveryWelded = rule.EveryWelded is { } length
                    ? DrawDesignForm.Text(length.Metres)
                    : null,
                EveryHours = rule.EveryHours?.ToString(CultureInfo.InvariantCulture),
                AfterToolChange = rule.AfterToolChange,
                AfterMachineWork = rule.AfterMachineWork,
                AfterDeviation = rule.AfterDeviation,
                AfterDefect = rule.AfterDefect,
                Source = rule.Source,
            };
}
