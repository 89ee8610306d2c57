using WeldTrace.Web.Features.Desk.LeakPlanning;
using WeldTrace.Web.Features.Desk.PassLayout;
using WeldTrace.Web.Features.Desk.Samples;
using WeldTrace.Web.Features.Desk.TestSafety;
using WeldTrace.Web.Features.Desk.ToolLives;
using WeldTrace.Web.Features.Desk.VesselSizing;
using WeldTrace.Web.Features.Desk.Windows;

namespace WeldTrace.Web.Features.Desk;

public static class Registration
{
    /// <summary>The calculations, in the order in which they are listed.</summary>
    public static IServiceCollection AddDesk(this IServiceCollection services) =>
        services
            .AddSingleton<IDeskSubject, PassLayoutSubject>()
            .AddSingleton<IDeskSubject, WindowSubject>()
            .AddSingleton<IDeskSubject, VesselSubject>()
            .AddSingleton<IDeskSubject, LeakSubject>()
            .AddSingleton<IDeskSubject, SafetySubject>()
            .AddSingleton<IDeskSubject, ToolLifeSubject>()
            .AddSingleton<IDeskSubject, SampleSubject>();

    public static void MapDesk(this IEndpointRouteBuilder endpoints) => endpoints.MapDeskSheets();
}
