using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.SignIn;

public sealed partial class SignIn
{
    private IReadOnlyList<FieldFault> _faults = [];

    [Inject]
    public required SignInHandler Handler { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [Inject]
    public required DemoMode Demo { get; init; }

    [Inject]
    public required TabletCookie Tablets { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "sign-in")]
    private SignInForm In { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "sign-in-passkey")]
    private PasskeySignInForm Key { get; set; } = null!;

    [SupplyParameterFromQuery(Name = "from")]
    private string? From { get; set; }

    protected override void OnInitialized() => (In, Key) = (In ?? new(), Key ?? new());

    private async Task EnterAsync() => Follow(await Handler.HandleAsync(In, Http));

    private async Task ProveAsync() => Follow(await Handler.HandleAsync(Key, Http));

    private void Follow(Outcome outcome)
    {
        _faults = Faults.Of<SignInForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(LocalAddress.Of(From));
        }
    }
}
