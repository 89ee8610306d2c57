using Bunit;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Web.Security;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Components;

/// <summary>A place to render one component, with a form token that is always the same.</summary>
public abstract class ComponentTest : BunitContext
{
    protected ComponentTest()
    {
        Services.AddSingleton<AntiforgeryStateProvider, FixedToken>();
        Services.AddSingleton<ISigningSession, NamedAlready>();
    }

    private sealed class FixedToken : AntiforgeryStateProvider
    {
        public override AntiforgeryRequestToken GetAntiforgeryToken() => new("token", "field");
    }
}
