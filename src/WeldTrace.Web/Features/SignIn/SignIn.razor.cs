using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Demo;

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
            Navigation.NavigateTo(IsLocal(From) ? From! : Routes.Home);
        }
    }

    private static bool IsLocal(string? address) =>
        address is ['/', ..]
        && !address.StartsWith("//", StringComparison.Ordinal)
        && !address.Contains('\\', StringComparison.Ordinal)
        // A browser leaves tabs and line ends out of an address, so that "/<tab>/" would become "//".
        && !address.Any(char.IsControl);
}
