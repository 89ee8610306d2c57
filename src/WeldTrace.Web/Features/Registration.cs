using WeldTrace.Web.Acts;
using WeldTrace.Web.Features.Archive;
using WeldTrace.Web.Features.Attachments;
using WeldTrace.Web.Features.Certificates;
using WeldTrace.Web.Features.Concessions;
using WeldTrace.Web.Features.Designs;
using WeldTrace.Web.Features.Desk;
using WeldTrace.Web.Features.Equipment;
using WeldTrace.Web.Features.Findings;
using WeldTrace.Web.Features.FirstRun;
using WeldTrace.Web.Features.Home;
using WeldTrace.Web.Features.Labels;
using WeldTrace.Web.Features.Laboratory;
using WeldTrace.Web.Features.LedgerView;
using WeldTrace.Web.Features.Limits;
using WeldTrace.Web.Features.Lots;
using WeldTrace.Web.Features.Material;
using WeldTrace.Web.Features.OpenCode;
using WeldTrace.Web.Features.OwnAccount;
using WeldTrace.Web.Features.People;
using WeldTrace.Web.Features.Procedures;
using WeldTrace.Web.Features.ProductionTests;
using WeldTrace.Web.Features.Qualifications;
using WeldTrace.Web.Features.SignIn;
using WeldTrace.Web.Features.SiteSettings;
using WeldTrace.Web.Features.SiteSettings.Key;
using WeldTrace.Web.Features.Systems;
using WeldTrace.Web.Features.Tablets;
using WeldTrace.Web.Features.Testing;
using WeldTrace.Web.Features.Tools;
using WeldTrace.Web.Features.Trace;
using WeldTrace.Web.Features.Vessels;
using WeldTrace.Web.Features.Welding;

namespace WeldTrace.Web.Features;

/// <summary>Each feature adds its handlers and its addresses here, a line each.</summary>
public static class Registration
{
    public static IServiceCollection AddFeatures(this IServiceCollection services) =>
        services
            .AddScoped<ActDesk>()
            .AddScoped<LabelReader>()
            .AddScoped<OpenCodeReader>()
            .AddSignIn()
            .AddScoped<FirstRunHandler>()
            .AddScoped<WorkReader>()
            .AddScoped<SiteSettingsHandler>()
            .AddPeople()
            .AddScoped<SiteKeyHandler>()
            .AddHostedService<KeyOnRecordHandler>()
            .AddLedger()
            .AddCertificates()
            .AddConcessions()
            .AddMaterial()
            .AddVessels()
            .AddTrace()
            .AddArchive()
            .AddLots()
            .AddProductionTests()
            .AddDesigns()
            .AddDesk()
            .AddProcedures()
            .AddLimits()
            .AddQualifications()
            .AddTools()
            .AddEquipment()
            .AddWelding()
            .AddTesting()
            .AddLaboratory()
            .AddFindings()
            .AddSystems()
            .AddScoped<SharedTabletsHandler>()
            .AddOwnAccount();

    public static void MapFeatures(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapPeople();
        endpoints.MapConcessions();
        endpoints.MapDesigns();
        endpoints.MapCertificates();
        endpoints.MapEquipment();
        endpoints.MapMaterial();
        endpoints.MapLabels();
        endpoints.MapLedger();
        endpoints.MapVessels();
        endpoints.MapTrace();
        endpoints.MapArchivedBundle();
        endpoints.MapLots();
        endpoints.MapProductionTests();
        endpoints.MapProcedures();
        endpoints.MapDesk();
        endpoints.MapLimits();
        endpoints.MapQualifications();
        endpoints.MapTools();
        endpoints.MapWelding();
        endpoints.MapAttachments();
        endpoints.MapTesting();
        endpoints.MapLaboratory();
        endpoints.MapFindings();
        endpoints.MapSystems();
        endpoints.MapOwnAccount();
    }
}
