using System.Globalization;
using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Certificates.Show;

public sealed partial class ShowCertificate
{
    private IReadOnlyList<FieldFault> _faults = [];
    private IReadOnlyList<FieldFault> _revokeFaults = [];
    private CertificateView? _view;
    private CertificateStanding _standing = null!;
    private Site _site = null!;
    private string _name = "";

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required CertificateHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required SiteDay Day { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "confirm")]
    private ConfirmForm In { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "revoke")]
    private RevokeForm Back { get; set; } = null!;

    private Certificate Certificate => _view!.Certificate;

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        Back ??= new();
        _site = await Sites.GetAsync(Http.RequestAborted);
        _name = (await Actor.GetAsync(Http.RequestAborted)).PrintedName;
        _view = await Handler.FindAsync(Id, Http.RequestAborted);
        if (_view is null)
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        _standing = CertificateStanding.Of(
            _view.Certificate,
            await Day.TodayAsync(Http.RequestAborted)
        );
    }

    private async Task ConfirmAsync()
    {
        var outcome = await Handler.ConfirmAsync(Id, In, await Actor.GetAsync(), default);
        _faults = Faults.Of<ConfirmForm>(outcome);
        Leave(outcome);
    }

    private async Task RevokeAsync()
    {
        var outcome = await Handler.RevokeAsync(Id, Back, await Actor.GetAsync(), default);
        _revokeFaults = Faults.Of<RevokeForm>(outcome, nameof(Back));
        Leave(outcome);
    }

    private void Leave(Outcome outcome)
    {
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Certificate(Id));
        }
    }

    private static string Show(DateOnly day) =>
        day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
