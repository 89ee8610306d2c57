using System.Globalization;
using WeldTrace.Domain.Lots;

namespace WeldTrace.Web.Features.Designs.Draw;

/// <summary>The destructive samples of each lot as typed; numbers left empty ask for none.</summary>
public sealed class SamplesForm
{
    public string? Sections { get; set; }

    public SampleChoice SectionChoice { get; set; } = SampleChoice.Drawn;

    public string? Bursts { get; set; }

    public SampleChoice BurstChoice { get; set; } = SampleChoice.Drawn;

    public string? BurstFactor { get; set; }

    public string? Coverage { get; set; } = "90";

    public string? Confidence { get; set; } = "95";

    public string? Source { get; set; }

    public bool IsEmpty => string.IsNullOrWhiteSpace(Sections) && string.IsNullOrWhiteSpace(Bursts);

    internal static SamplesForm Of(SamplePlan? plan)
    {
        var form = new SamplesForm();
        if (plan is null)
        {
            return form;
        }

        foreach (var demand in plan.Demands)
        {
            var count = demand.Count.ToString(CultureInfo.InvariantCulture);
            if (demand.Kind == SampleKind.Section)
            {
                (form.Sections, form.SectionChoice) = (count, demand.Choice);
            }
            else
            {
                (form.Bursts, form.BurstChoice) = (count, demand.Choice);
            }
        }

        form.BurstFactor = plan.BurstFactor?.ToString(CultureInfo.InvariantCulture);
        form.Coverage = (plan.Coverage * 100).ToString("0.##", CultureInfo.InvariantCulture);
        form.Confidence = (plan.Confidence * 100).ToString("0.##", CultureInfo.InvariantCulture);
        form.Source = plan.Source;
        return form;
    }
}
