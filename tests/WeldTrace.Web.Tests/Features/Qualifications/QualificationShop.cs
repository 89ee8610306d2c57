using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Http;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Qualifications;
using WeldTrace.Web.Features.Qualifications.Enter;
using WeldTrace.Web.Features.Qualifications.Plan;
using WeldTrace.Web.Features.Qualifications.Show;
using WeldTrace.Web.Features.Qualifications.Weld;

namespace WeldTrace.Web.Tests.Features.Qualifications;

/// <summary>A shop with a lap procedure on trial, and everybody and everything that qualifies it.</summary>
internal sealed class QualificationShop : IAsyncDisposable
{
    private QualificationShop(WorkingSite site) => Site = site;

    public WorkingSite Site { get; }

    public required ProcedureRevision Revision { get; init; }

    public required Tool Tool { get; init; }

    public required ToolDesign Design { get; init; }

    public required Machine Machine { get; init; }

    public required MaterialLot Lot { get; init; }

    public required Actor Engineer { get; init; }

    public required Actor Operator { get; init; }

    public required Actor Inspector { get; init; }

    public required Actor Quality { get; init; }

    public PlanQualificationHandler Planning => new(Site.Database, Site.Clock);

    public BeginPieceHandler Beginning => new(Site.Database, Site.Day, Site.Clock);

    public TestPieceHandler Pieces => new(Site.Database, Site.Desk);

    public EnterResultHandler Entering => new(Site.Database, Site.Passwords, Site.Day, Site.Clock);

    public QualificationHandler Qualifications => new(Site.Desk, Site.Sites);

    public QualificationReader Reader => new(Site.Database);

    public static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public static async Task<QualificationShop> OpenAsync(PostgresServerFixture server)
    {
        var site = await WorkingSite.OpenAsync(server);
        var design = SampleTools.Design();
        var inspector = SamplePeople.Entered("Ines Falk", Role.Inspector);
        var shop = new QualificationShop(site)
        {
            Revision = SampleProcedures.OnTrial(design),
            Tool = SampleTools.InService(design),
            Design = design,
            Machine = SampleMachines.Entered(),
            Lot = SampleMaterial.Lot(),
            Engineer = await site.EnterAsync("Edda Lund", Role.Engineer),
            Operator = await site.EnterAsync("Olav Berg", Role.Operator),
            Quality = await site.EnterAsync("Quentin Hale", Role.QualityManager),
            Inspector = await site.EnterAsync(inspector),
        };
        await site.Database.AddAsync([
            design,
            shop.Revision,
            shop.Tool,
            shop.Machine,
            shop.Lot,
            .. SampleLimits.Fresh(),
            .. SampleCertificates.AllMethods(inspector),
            SampleInstruments.Calibrated("MS-04", InstrumentKind.Length, "mm"),
        ]);
        return shop;
    }

    public async Task<PlanQualificationForm> PlanFormAsync()
    {
        var choices = await Planning.ChoicesAsync(Revision.Id, Cancellation);
        return new PlanQualificationForm
        {
            Number = choices!.NextNumber,
            Groups = Of(ShippedLimits.Groups),
            ExtentOfTesting = Of(ShippedLimits.Extent),
            TensileFactors = Of(ShippedLimits.Tensile),
            BendFormers = Of(ShippedLimits.Bend),
            Imperfections = Of(ShippedLimits.Imperfections),
            QualificationRange = Of(ShippedLimits.StrictRange),
            PieceLength = "200",
        };

        Guid Of(string code) => choices.Tables.Single(t => t.Code == code).Id;
    }

    public async Task<QualificationRecord> PlannedAsync() =>
        Accept.Value(
            await Planning.HandleAsync(Revision.Id, await PlanFormAsync(), Engineer, Cancellation)
        );

    public BeginPieceForm BeginForm() =>
        new()
        {
            Id = Guid.CreateVersion7(Site.Clock.GetUtcNow()),
            Machine = Machine.Name,
            Tool = Tool.Mark,
            Lots = [Lot.Id],
        };

    public async Task<TestPiece> BegunAsync(QualificationRecord record, string mark = "1") =>
        Accept.Value(
            await Beginning.HandleAsync(record.Id, mark, BeginForm(), Operator, Cancellation)
        );

    /// <summary>Welds a planned piece and closes it with a log at the planned settings.</summary>
    public async Task<TestPiece> WeldedAsync(QualificationRecord record, string mark)
    {
        var piece = await BegunAsync(record, mark);
        Site.Clock.Advance(TimeSpan.FromMinutes(5));
        var planned = record.Plan.Pieces.Single(p => p.Mark == mark);
        Accept.All(await FinishAsync(piece.Id, Log(planned)));
        await Site.ChangeAsync<Tool>(
            Tool.Id,
            tool =>
                tool.Inspect(
                    new InspectionEntry(ToolInspectionKind.Cleaned, true, "Brushed.", null, null),
                    Design,
                    Site.Today,
                    Operator,
                    Site.Clock.GetUtcNow()
                )
        );
        return await Site.ReadAsync<TestPiece>(piece.Id);
    }

    public Task<Outcome> FinishAsync(Guid piece, IFormFile? log, string? password = null) =>
        Pieces.FinishAsync(
            piece,
            new FinishPieceForm { Log = log, Password = password ?? WorkingSite.Password },
            Operator,
            Cancellation
        );

    public EnterResultForm ResultForm() =>
        new()
        {
            Id = Guid.CreateVersion7(Site.Clock.GetUtcNow()),
            Method = "ISO 17637",
            MethodEdition = "2016",
            Acceptance = "ISO 25239-5",
            AcceptanceEdition = "2020, level as agreed",
            TestedOn = Site.Today,
            Instrument = "MS-04",
            Acceptable = nameof(Acceptability.Acceptable),
            Findings = "none",
            Password = WorkingSite.Password,
        };

    public Task<Outcome<SpecimenTest>> EnterAsync(
        QualificationRecord record,
        string planned,
        EnterResultForm? form = null,
        Actor? actor = null
    ) =>
        Entering.HandleAsync(
            record.Id,
            planned,
            form ?? ResultForm(),
            actor ?? Inspector,
            Cancellation
        );

    /// <summary>A machine's log of a straight weld of 200 mm at the planned settings: 10 samples a second.</summary>
    public static IFormFile Log(PlannedPiece planned, double lengthMillimetres = 200)
    {
        var rpm = (double)planned.Of(WeldParameter.SpindleSpeed)!.Value;
        var feed = (double)planned.Of(WeldParameter.TravelSpeed)!.Value;
        var text = new StringBuilder(
            "t [s],spindle [rpm],feed [mm/min],Fz [kN],torque [Nm],z [mm]\n"
        );
        var travel = lengthMillimetres / (feed / 60);
        for (var t = 0.0; t <= travel + 20; t += 0.1)
        {
            var isTravelling = t > 10 && t <= 10 + travel;
            var depth =
                t < 2 ? 5 - (2.5 * t)
                : t < 8 ? -3.2 * (t - 2) / 6
                : t < 12 + travel ? -3.2
                : 5;
            text.Append(
                CultureInfo.InvariantCulture,
                $"{t:F1},{rpm:F1},{(isTravelling ? feed : 0):F1},{(depth < 0 ? 8 : 0):F1},18.0,{depth:F2}\n"
            );
        }

        return File(text.ToString());
    }

    public static IFormFile File(string text) => WorkingSite.Paper(text, "piece.csv");

    public ValueTask DisposeAsync() => Site.DisposeAsync();
}
