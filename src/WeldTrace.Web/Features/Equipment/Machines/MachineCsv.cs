using Microsoft.AspNetCore.Http.Extensions;
using WeldTrace.Domain.Equipment;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Equipment.Machines;

public static class MachineCsv
{
    private static readonly string[] Heads = ["name", "description", "control mode", "state"];

    public static void MapMachineCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.MachinesCsv,
            async (HttpContext http, MachineListReader reader, SiteDay day) =>
            {
                var address = new Uri(http.Request.GetEncodedUrl());
                var today = await day.TodayAsync(http.RequestAborted);
                var (rows, _) = await reader.ReadAsync(
                    TableQuery.Read(address, MachineListReader.SortKeys),
                    whole: true,
                    http.RequestAborted
                );
                return CsvText.File("machines.csv", Heads, rows.Select(m => Row(m, today)));
            }
        );

    private static IReadOnlyList<string?> Row(Machine machine, DateOnly today) =>
        [
            machine.Name,
            machine.Description,
            machine.ControlMode,
            MachineWords.Of(machine.StateOn(today)),
        ];
}
