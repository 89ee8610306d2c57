using System.IO.Compression;
using System.Security.Cryptography;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Material.Lots;
using WeldTrace.Web.Features.Vessels.Book;
using WeldTrace.Web.Features.Vessels.Bundle;
using WeldTrace.Web.Features.Vessels.Traveler;
using WeldTrace.Web.Tests.Features.Material;
using WeldTrace.Web.Tests.Pictures;

namespace WeldTrace.Web.Tests.Features.Vessels;

public sealed class VesselBundleTests(PostgresServerFixture server)
{
    private const string Document = "%PDF-1.7 inspection document of the lot";
    private const string Chart = "%PDF-1.7 chart of the furnace";

    [Fact]
    public async Task Bundle_OfAVessel_HoldsThePapersOfItsMaterial()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (design, lot) = (SampleDesigns.Released(), SampleMaterial.Bare());
        var vessel = SampleVessels.Planned(design, lot);
        await site.Database.AddAsync(
            design,
            lot,
            vessel,
            SampleInstruments.Calibrated("TC-3", InstrumentKind.Temperature, "°C")
        );
        Accept.All(await FileDocumentAsync(site, lot.Id));
        Accept.Value(await FurnaceLoad.EnterAsync(site, FurnaceLoad.Form(vessel.Serial, Chart)));

        var papers = await PapersAsync(site, vessel.Serial);

        Assert.Contains(Named(Document), papers);
        Assert.Contains(Named(Chart), papers);
    }

    private static Task<Outcome> FileDocumentAsync(WorkingSite site, Guid lot) =>
        new FileLotHandler(site.Desk).HandleAsync(
            lot,
            new()
            {
                Type = nameof(InspectionDocumentType.Type31),
                ProductStandard = "EN 755-2",
                File = WorkingSite.Paper(Document),
            },
            SamplePeople.Inspector,
            CancellationToken.None
        );

    private static async Task<IReadOnlyList<string>> PapersAsync(WorkingSite site, string serial)
    {
        var folder = Directory.CreateTempSubdirectory("bundle-key-").FullName;
        var travelers = new TravelerReader(
            site.Database,
            site.Sites,
            SamplePictures.Store(site.Database),
            site.Stamps
        );
        var reader = new BundleReader(
            site.Database,
            site.Sites,
            travelers,
            new BookReader(site.Database, site.Sites, travelers, [], site.Stamps),
            new SiteKeyFolder(folder),
            site.Clock
        );
        await using var file = new FileStream(
            Path.GetTempFileName(),
            new FileStreamOptions
            {
                Access = FileAccess.ReadWrite,
                Mode = FileMode.Create,
                Options = FileOptions.DeleteOnClose,
            }
        );
        Assert.True(
            await reader.WriteAsync(
                serial,
                new Uri("https://records.example/"),
                SamplePeople.Auditor,
                file,
                CancellationToken.None
            )
        );
        file.Position = 0;
        using var archive = new ZipArchive(file, ZipArchiveMode.Read);
        return
        [
            .. archive
                .Entries.Where(e => e.FullName.Contains("attachments/", StringComparison.Ordinal))
                .Select(e => Path.GetFileNameWithoutExtension(e.Name)),
        ];
    }

    private static string Named(string paper) =>
        Convert.ToHexStringLower(SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(paper)));
}
