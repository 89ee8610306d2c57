using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Material.HeatTreatments;

namespace WeldTrace.Web.Tests.Features.Material;

/// <summary>A furnace load that kept its cycle, as it is typed; the thermocouple is TC-3.</summary>
internal static class FurnaceLoad
{
    public static HeatTreatmentForm Form(string parts, string paper = "%PDF-1.7 a chart") =>
        new()
        {
            Number = "F-12",
            Furnace = "Furnace 2",
            On = SampleTime.Day,
            Instruction = "WI-40",
            Lower = "170",
            Upper = "180",
            ShortestMinutes = "160",
            LongestMinutes = "200",
            Lowest = "171",
            Highest = "178",
            Minutes = "180",
            InstrumentMark = "TC-3",
            Parts = parts,
            File = WorkingSite.Paper(paper),
        };

    public static Task<Outcome<HeatTreatment>> EnterAsync(
        WorkingSite site,
        HeatTreatmentForm form
    ) =>
        new HeatTreatmentHandler(site.Database, site.Day, site.Clock).HandleAsync(
            form,
            SamplePeople.Operator,
            CancellationToken.None
        );
}
