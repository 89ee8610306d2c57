using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Identity;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Passwords;

public sealed partial class ChangePassword
{
    private IReadOnlyList<FieldFault> _faults = [];
    private bool _isDone;

    [Inject]
    public required UserManager<Account> Accounts { get; init; }

    [Inject]
    public required Sessions Sessions { get; init; }

    [Inject]
    public required PasswordCheck Passwords { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm]
    private ChangePasswordForm In { get; set; } = null!;

    protected override void OnInitialized() => In ??= new();

    private async Task SaveAsync()
    {
        var account = await Accounts.GetUserAsync(Http.User);
        var outcome = await Passwords.CheckAsync(
            account,
            In.Current,
            "The password now in use is not right."
        );
        if (
            outcome.IsAccepted
            && PasswordRules.FaultOf(In.New ?? "", account!.UserName ?? "") is { } fault
        )
        {
            outcome = Outcome.Refused("password", fault, nameof(In.New));
        }

        if (outcome.IsAccepted)
        {
            account!.MustChangePassword = false;
            await Accounts.ChangePasswordAsync(account, In.Current!, In.New!);
            await Sessions.GoOnAloneAsync(account, Http);
            _isDone = true;
        }

        _faults = Faults.Of(outcome, "In", ["Current", "New"]);
    }
}

public sealed class ChangePasswordForm
{
    public string? Current { get; set; }

    public string? New { get; set; }
}
