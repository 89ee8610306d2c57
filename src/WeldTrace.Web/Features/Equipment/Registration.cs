using WeldTrace.Web.Features.Equipment.Describe;
using WeldTrace.Web.Features.Equipment.ImportInstruments;
using WeldTrace.Web.Features.Equipment.Instruments;
using WeldTrace.Web.Features.Equipment.Machines;
using WeldTrace.Web.Features.Equipment.Maintain;
using WeldTrace.Web.Features.Equipment.NewInstrument;
using WeldTrace.Web.Features.Equipment.NewMachine;
using WeldTrace.Web.Features.Equipment.PushLogs;
using WeldTrace.Web.Features.Equipment.ReportEvent;
using WeldTrace.Web.Features.Equipment.ShowInstrument;
using WeldTrace.Web.Features.Equipment.ShowMachine;
using WeldTrace.Web.Features.Equipment.TestWelds;

namespace WeldTrace.Web.Features.Equipment;

public static class Registration
{
    public static IServiceCollection AddEquipment(this IServiceCollection services) =>
        services
            .AddScoped<MachineListReader>()
            .AddScoped<NewMachineHandler>()
            .AddScoped<DescribeMachineHandler>()
            .AddScoped<ReportMachineHandler>()
            .AddScoped<RecordTestWeldHandler>()
            .AddScoped<ReleaseMachineHandler>()
            .AddScoped<MaintainMachineHandler>()
            .AddScoped<PushLogsHandler>()
            .AddScoped<InstrumentListReader>()
            .AddScoped<NewInstrumentHandler>()
            .AddScoped<ImportInstrumentsHandler>()
            .AddScoped<InstrumentHandler>()
            .AddScoped<MachineReader>();

    public static void MapEquipment(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapMachineCsv();
        endpoints.MapInstrumentCsv();
    }
}
