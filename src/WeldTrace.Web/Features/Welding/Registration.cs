using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Features.Welding.AcrossRuns;
using WeldTrace.Web.Features.Welding.Arrivals;
using WeldTrace.Web.Features.Welding.BringLog;
using WeldTrace.Web.Features.Welding.CorrectPhases;
using WeldTrace.Web.Features.Welding.EndRun;
using WeldTrace.Web.Features.Welding.InterruptRun;
using WeldTrace.Web.Features.Welding.OverlayRuns;
using WeldTrace.Web.Features.Welding.ReadLog;
using WeldTrace.Web.Features.Welding.ReviewSignal;
using WeldTrace.Web.Features.Welding.ShowRun;
using WeldTrace.Web.Features.Welding.SignRun;
using WeldTrace.Web.Files;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Features.Welding;

public static class Registration
{
    public static IServiceCollection AddWelding(this IServiceCollection services) =>
        services
            .AddSingleton<StagedLogs>()
            .AddSingleton<ArrivedLogs>()
            .AddSingleton<LogIntake>()
            .AddSingleton<SignalWatch>()
            .AddHostedService<WatchedFolderReader>()
            .AddScoped<WeldStepReader>()
            .AddScoped<StartRunHandler>()
            .AddScoped<EndRunHandler>()
            .AddScoped<InterruptRunHandler>()
            .AddScoped<CorrectPhasesHandler>()
            .AddScoped<LogUploadHandler>()
            .AddScoped<ReadLogHandler>()
            .AddScoped<SignRunHandler>()
            .AddScoped<AcrossRunsReader>()
            .AddScoped<ReviewSignalReader>()
            .AddScoped<ReviewSignalHandler>()
            .AddScoped<OverlayReader>()
            .AddScoped<RunReader>()
            .AddScoped<IWorkings, RunWorkings>()
            .AddScoped<RunSamplesReader>();

    public static void MapWelding(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapLogUpload();
        endpoints.MapPushLogs();
        endpoints.MapTakeArrived();
        endpoints.MapRunSamples();
        endpoints.MapRunOverlay();
        endpoints.MapRunLogCsv();
        endpoints.MapRunOriginal();
    }
}
