using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.FirstRun;

public sealed partial class FirstRun
{
    private static readonly IReadOnlyList<FieldOption> Zones =
    [
        .. TimeZoneInfo
            .GetSystemTimeZones()
            .Select(z => z.Id)
            .Order(StringComparer.Ordinal)
            .Select(id => new FieldOption(id, id)),
    ];

    private static readonly IReadOnlyList<FieldOption> UnitChoices =
    [
        new(nameof(UnitSystem.Metric), "metric (mm, kN, bar, °C)"),
        new(nameof(UnitSystem.InchPound), "inch-pound (in, lbf, psi, °F)"),
    ];

    private IReadOnlyList<FieldFault> _faults = [];

    [Inject]
    public required FirstRunHandler Handler { get; init; }

    [Inject]
    public required SetUpCode Code { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm]
    private FirstRunForm In { get; set; } = null!;

    private bool NeedsCode => !SetUpCode.IsLocal(Http);

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        if (await Sites.FindAsync(Http.RequestAborted) is not null)
        {
            Navigation.NavigateTo(Routes.SignIn);
        }
    }

    private async Task SaveAsync()
    {
        var outcome =
            NeedsCode && !Code.Matches(In.SetUpCode)
                ? Outcome.Refused(
                    "code",
                    "The set-up code is not right; read it from the server's output.",
                    nameof(In.SetUpCode)
                )
                : await Handler.HandleAsync(In, Http.RequestAborted);
        _faults = Faults.Of<FirstRunForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.SignIn);
        }
    }
}
