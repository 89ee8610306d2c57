using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;

namespace WeldTrace.Web.Features.Welding;

public sealed class StartRunForm
{
    /// <summary>Identity of the run, made when the form was shown, so that a second press starts no second run.</summary>
    public Guid Id { get; set; }

    public string? Tool { get; set; }

    public string? Machine { get; set; }

    /// <summary>Travel sense that the operator read off the machine.</summary>
    public RotationSense? Travel { get; set; }

    public bool JointPreparation { get; set; }

    public bool FitUp { get; set; }

    public bool Parameters { get; set; }

    public bool Preheat { get; set; }

    /// <summary>Checks before welding that the operator confirmed.</summary>
    public IReadOnlyCollection<PreWeldItem> Confirmed =>
        [.. Enum.GetValues<PreWeldItem>().Where(Has)];

    /// <summary>Whether the operator confirmed a check.</summary>
    public bool Has(PreWeldItem item) =>
        item switch
        {
            PreWeldItem.JointPreparation => JointPreparation,
            PreWeldItem.FitUp => FitUp,
            PreWeldItem.Parameters => Parameters,
            PreWeldItem.Preheat => Preheat,
            _ => false,
        };
}
