using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Material;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Features.Material.Lots;

namespace WeldTrace.Web.Tests.Features.Material;

public sealed class LotActsTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Enter_WithDocumentAndResults_JudgesThemAndKeepsTheScan()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var minima = SampleMaterial.Minima();
        await site.Database.AddAsync(minima);
        var form = Form(minima);

        var entered = await EnterAsync(site, form);

        Assert.Empty(entered.Refusals);
        var lot = await site.ReadAsync<MaterialLot>(entered.Value!.Id);
        Assert.Equal(InspectionDocumentType.Type31, lot.Document!.Type);
        Assert.False(lot.Results!.Misses);
        Assert.Equal(minima.Reference, lot.Results.Minima);
        Assert.Equal(
            1,
            await site.Database.ReadAsync(db =>
                db.Attachments.CountAsync(a => a.Sha256 == lot.Document.FileSha256)
            )
        );
        Assert.Equal(1, await site.EntriesAsync(lot.Id));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Enter_ManyFaults_TellsAllAndSavesNothing()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var form = Form(SampleMaterial.Minima());
        form.TensileStrength = "strong";
        form.Type = "Type99";
        form.File = WorkingSite.Paper("PK a zip", "certificate.pdf");

        var entered = await EnterAsync(site, form);

        Assert.Equal(
            "file:File choice:Type number:TensileStrength",
            WorkingSite.Text(entered.Refusals)
        );
        Assert.Equal(0, await site.Database.ReadAsync(db => db.MaterialLots.CountAsync()));
    }

    [Fact]
    public async Task Enter_NumberTaken_NamesTheField()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await site.Database.AddAsync(SampleMaterial.Lot("ML-7"));

        var entered = await EnterAsync(site, Form(SampleMaterial.Minima()));

        Assert.Equal("exists:Number", WorkingSite.Text(entered.Refusals));
    }

    [Fact]
    public async Task File_ALotEnteredEarlier_AddsDocumentAndResults()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var lot = SampleMaterial.Bare();
        await site.Database.AddAsync(lot);
        var handler = new FileLotHandler(site.Desk);

        var untold = await handler.HandleAsync(
            lot.Id,
            new() { TensileStrength = "290" },
            SamplePeople.Inspector,
            CancellationToken.None
        );
        var filed = await handler.HandleAsync(
            lot.Id,
            new()
            {
                Type = nameof(InspectionDocumentType.Type22),
                ProductStandard = "EN 755-2",
                File = WorkingSite.Paper(),
            },
            SamplePeople.Inspector,
            CancellationToken.None
        );

        Assert.Equal("type:Type", WorkingSite.Text(untold.Refusals));
        Assert.Empty(filed.Refusals);
        Assert.NotNull((await site.ReadAsync<MaterialLot>(lot.Id)).Document!.FileSha256);
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Read_FiltersAndSorts()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await site.Database.AddAsync(
            SampleMaterial.Bare("ML-1", "6061"),
            SampleMaterial.Bare("ML-2", "6082"),
            SampleMaterial.Bare("ML-3", "6061")
        );
        var query = TableQuery.Read(
            new Uri("http://localhost/equipment/material?alloy=6061&sort=-number"),
            LotReader.SortKeys
        );

        var (rows, total) = await new LotReader(site.Database).ReadAsync(
            query,
            whole: false,
            CancellationToken.None
        );

        Assert.Equal(2, total);
        Assert.Equal(["ML-3", "ML-1"], rows.Select(l => l.Number));
    }

    private static EnterLotForm Form(LimitTable minima) =>
        new()
        {
            Number = "ML-7",
            Alloy = "6061",
            Temper = "T6",
            CastNumber = "C-1",
            Form = "extruded tube",
            CertificateNumber = "IC-1",
            Type = nameof(InspectionDocumentType.Type31),
            ProductStandard = "ASTM B241",
            TensileStrength = "300",
            ProofStrength = "270,5",
            Elongation = "15",
            Minima = minima.Id,
            File = WorkingSite.Paper(),
        };

    private static Task<WeldTrace.Domain.Records.Outcome<MaterialLot>> EnterAsync(
        WorkingSite site,
        EnterLotForm form
    ) =>
        new EnterLotHandler(site.Database, site.Clock).HandleAsync(
            form,
            SamplePeople.Inspector,
            CancellationToken.None
        );
}
