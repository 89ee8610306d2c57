using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Testing;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.ShowTest;

/// <summary>What the pages of all recorded tests have in common: they load the test and know who looks at it.</summary>
public abstract class TestPage<TTest> : ComponentBase
    where TTest : TestRecord
{
    [Inject]
    public required ShowTestHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actors { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [Parameter]
    public Guid Id { get; set; }

    /// <summary>The test with what stands around it; null when there is none of this kind.</summary>
    protected ShownTest? Shown { get; private set; }

    protected TTest? Test => Shown?.Test as TTest;

    protected Actor Viewer { get; private set; } = null!;

    protected Site Site { get; private set; } = null!;

    protected override async Task OnInitializedAsync()
    {
        (Viewer, Site) = (await Actors.GetAsync(), await Sites.GetAsync());
        Shown = await Handler.FindAsync(Id, CancellationToken.None);
        if (Test is null)
        {
            Shown = null;
            Navigation.NotFound();
        }
    }
}
