using WeldTrace.Web.Features.Equipment.Machines;
using WeldTrace.Web.Features.Equipment.NewMachine;
using WeldTrace.Web.Features.Equipment.ShowMachine;

namespace WeldTrace.Web.Features.Equipment;

public static class Registration
{
    public static IServiceCollection AddEquipment(this IServiceCollection services) =>
        services
            .AddScoped<MachineListReader>()
            .AddScoped<NewMachineHandler>()
            .AddScoped<MachineReader>();
}
