using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Features.Testing.ExaminationPaper;
using WeldTrace.Web.Features.Testing.ListTests;
using WeldTrace.Web.Features.Testing.Logs;
using WeldTrace.Web.Features.Testing.MeasureSection;
using WeldTrace.Web.Features.Testing.PressureTesting;
using WeldTrace.Web.Features.Testing.RecordLeakTest;
using WeldTrace.Web.Features.Testing.Report;
using WeldTrace.Web.Features.Testing.SectionPictures;
using WeldTrace.Web.Features.Testing.SectionReport;
using WeldTrace.Web.Features.Testing.ShowTest;
using WeldTrace.Web.Features.Testing.SignOff;
using WeldTrace.Web.Features.Testing.TakeInSection;
using WeldTrace.Web.Pictures;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing;

public static class Registration
{
    public static IServiceCollection AddTesting(this IServiceCollection services) =>
        services
            .AddScoped<RecordLeakTestHandler>()
            .AddScoped<ArrivedReadings>()
            .AddScoped<PressureTestingHandler>()
            .AddSingleton<PictureStore>()
            .AddScoped<TakeInSectionHandler>()
            .AddScoped<MeasureSectionHandler>()
            .AddScoped<IBookChapters, SectionReportReader>()
            .AddScoped<SectionReportReader>()
            .AddScoped<ExaminationPaperReader>()
            .AddScoped<IBookChapters, ExaminationPaperReader>()
            .AddScoped<SignOffHandler>()
            .AddScoped<ShowTestHandler>()
            .AddScoped<IWorkings, TestWorkings>()
            .AddScoped<SignTestHandler>()
            .AddScoped<DecideDepartureHandler>()
            .AddScoped<IBookChapters, TestReportReader>()
            .AddScoped<TestReportReader>()
            .AddScoped<ListTestsHandler>();

    public static void MapTesting(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapTestsCsv();
        endpoints.MapPushStage();
        endpoints.MapPushDecay();
        endpoints.MapTestReports();
        endpoints.MapSectionPictures();
        endpoints.MapSectionReport();
        endpoints.MapExaminationPaper();
    }
}
