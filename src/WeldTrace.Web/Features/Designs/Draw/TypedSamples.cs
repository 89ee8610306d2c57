using System.Globalization;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Designs.Draw;

/// <summary>Reads the typed samples of a design.</summary>
internal static class TypedSamples
{
    /// <summary>The plan; null when no sample is asked for.</summary>
    public static SamplePlan? Read(SamplesForm form, List<Refusal> refusals)
    {
        if (form.IsEmpty)
        {
            return null;
        }

        List<SampleDemand> demands = [];
        Add(SampleKind.Section, form.Sections, form.SectionChoice, "Section samples");
        Add(SampleKind.Burst, form.Bursts, form.BurstChoice, "Burst samples");
        return new SamplePlan(
            demands,
            form.Source?.Trim() ?? "",
            Share(form.Coverage, "Coverage of the burst statement"),
            Share(form.Confidence, "Confidence of the statements"),
            string.IsNullOrWhiteSpace(form.BurstFactor)
                ? null
                : Typed.Number(
                    form.BurstFactor,
                    "Least burst factor",
                    nameof(DrawDesignForm.Samples),
                    refusals
                )
        );

        decimal Share(string? text, string what) =>
            (Typed.Number(text, what, nameof(DrawDesignForm.Samples), refusals) ?? 0) / 100;

        void Add(SampleKind kind, string? text, SampleChoice choice, string what)
        {
            if (string.IsNullOrWhiteSpace(text))
            {
                return;
            }

            if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count))
            {
                demands.Add(new(kind, count, choice));
            }
            else
            {
                refusals.Add(
                    new(
                        "number",
                        $"{what}: give a whole number, or leave it empty for none.",
                        nameof(DrawDesignForm.Samples)
                    )
                );
            }
        }
    }
}
