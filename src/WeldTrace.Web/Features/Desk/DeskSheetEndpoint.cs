using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Desk;

/// <summary>Prints a calculation sheet from the address that holds what was entered.</summary>
public static class DeskSheetEndpoint
{
    public static void MapDeskSheets(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/desk/{name}/sheet.pdf",
            async (
                string name,
                HttpContext http,
                IEnumerable<IDeskSubject> subjects,
                SiteReader sites,
                StampReader stamps
            ) =>
            {
                if (subjects.FirstOrDefault(s => s.Name == name) is not { } subject)
                {
                    return Results.NotFound();
                }

                var site = await sites.GetAsync(http.RequestAborted);
                var sheet = DeskSheet.Read(
                    subject,
                    http.Request.QueryString.Value ?? "",
                    site.Units
                );
                if (sheet.Calculation is not { } calculation)
                {
                    // The page says what is wrong, at each field.
                    return Results.LocalRedirect(sheet.At(subject.Path));
                }

                return await http.PrintAsync(
                    async (address, actor, token) =>
                        Print(
                            new CalculationSheetModel(
                                await stamps.ReadAsync(actor, token) with
                                {
                                    Units = sheet.Units,
                                },
                                new Uri(address, sheet.At(subject.Path)).AbsoluteUri,
                                calculation
                            )
                        )
                );
            }
        );

    private static byte[] Print(CalculationSheetModel model)
    {
        using MemoryStream pdf = new();
        CalculationSheetExporter.Write(model, pdf);
        return pdf.ToArray();
    }
}
