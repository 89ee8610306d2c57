using System.Globalization;
using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Features.Procedures.Write;

/// <summary>The details of a procedure as typed.</summary>
public sealed class DetailsForm
{
    public string? OtherAlloy { get; set; }

    public string? OtherTemper { get; set; }

    public string? OtherThickness { get; set; }

    public string? OuterDiameter { get; set; }

    public string? Class { get; set; }

    public string? Penetration { get; set; }

    public string? LargestGap { get; set; }

    public string? LargestMismatch { get; set; }

    public string? CleaningLimit { get; set; }

    public string? Machine { get; set; }

    public string? ControlMode { get; set; }

    public string? ToolType { get; set; }

    public string? PostWeld { get; set; }

    // A form without any box ticked posts nothing, which is bound as null.
    public List<Guid> Instruments
    {
        get;
        set => field = value ?? [];
    } = [];

    public IFormFile? Sketch { get; set; }

    /// <summary>Whether a sketch that is there already goes away.</summary>
    public bool DropSketch { get; set; }

    // A form sent without any of them arrives as null.
    public List<ParticularForm> Particulars
    {
        get;
        set => field = value ?? [];
    } = [];

    /// <summary>One row for each field in words; rows without a text don't count.</summary>
    public void FillRows()
    {
        foreach (
            var field in Enum.GetValues<ProcedureField>()
                .Where(f => Particulars.All(p => p.Field != f))
        )
        {
            Particulars.Add(new ParticularForm { Field = field });
        }

        Particulars = [.. Particulars.OrderBy(p => p.Field)];
    }

    public static DetailsForm Of(ProcedureDetails details)
    {
        ArgumentNullException.ThrowIfNull(details);
        return new DetailsForm
        {
            OtherAlloy = details.Other?.Alloy,
            OtherTemper = details.Other?.Temper,
            OtherThickness = Millimetres(details.Other?.Thickness),
            OuterDiameter = Millimetres(details.OuterDiameter),
            Class = details.Class?.ToString(),
            Penetration = details.Penetration?.ToString(),
            LargestGap = details.LargestGap?.Digits,
            LargestMismatch = details.LargestMismatch?.Digits,
            CleaningLimit = details.CleaningLimit?.Digits,
            Machine = details.Machine?.Id.ToString("D"),
            ControlMode = details.ControlMode,
            ToolType = details.ToolType?.ToString(),
            PostWeld = details.PostWeld?.ToString(),
            Instruments = [.. details.Instruments.Select(i => i.Id)],
            Particulars =
            [
                .. details.Particulars.Select(p => new ParticularForm
                {
                    Field = p.Field,
                    Text = p.Text,
                    IsEssential = p.IsEssential,
                }),
            ],
        };
    }

    private static string? Millimetres(Length? length) =>
        length?.Millimetres.ToString("0.###", CultureInfo.InvariantCulture);
}

/// <summary>A field in words as typed.</summary>
public sealed class ParticularForm
{
    public ProcedureField Field { get; set; }

    public string? Text { get; set; }

    public bool IsEssential { get; set; }
}
