using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Procedures.Write;

namespace WeldTrace.Web.Tests.Features.Procedures;

public sealed class WriteProcedureHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task HandleAsync_FullFieldList_IsKeptWithItsLedgerEntry()
    {
        await using var database = await SiteDatabase.CreateAsync(server);
        var (tool, machine) = (SampleTools.Design(), SampleMachines.Entered());
        await database.AddAsync(tool, machine);
        var form = Form(tool.Id);
        form.Details.Machine = machine.Id.ToString("D");
        form.Details.Class = nameof(JointClass.B);
        form.Details.LargestGap = "0,30";
        form.Details.CleaningLimit = "4";
        form.Details.Particulars.Single(p => p.Field == ProcedureField.EdgePreparation).Text =
            " milled ";
        form.Details.Sketch = File("%PDF-1.7 sketch", "sketch.pdf");

        var written = await WriteAsync(database, form);

        Assert.True(written.IsAccepted, string.Join(' ', written.Refusals.Select(r => r.Sentence)));
        var kept = await database.ReadAsync(db => db.ProcedureRevisions.SingleAsync());
        var details = kept.Content.DetailsOrNone;
        Assert.Equal(machine.Name, details.Machine?.Label);
        Assert.Equal(machine.ControlMode, details.ControlMode);
        Assert.Equal(new Measured("0.30", "mm"), details.LargestGap);
        Assert.Equal("milled", Assert.Single(details.Particulars).Text);
        Assert.Equal("application/pdf", details.Sketch?.MediaType);
        Assert.Equal(
            1,
            await database.ReadAsync(db => db.LedgerEntries.CountAsync(e => e.RecordId == kept.Id))
        );
    }

    [Fact]
    public async Task HandleAsync_WindowBeyondTheNamedMachine_NamesTheWindow()
    {
        await using var database = await SiteDatabase.CreateAsync(server);
        var (tool, machine) = (SampleTools.Design(), SampleMachines.Entered());
        Accept.All(
            machine.Describe(
                new MachineCapability(
                    RotationSpeed.FromRevolutionsPerMinute(100),
                    null,
                    null,
                    null
                ),
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );
        await database.AddAsync(tool, machine);
        var form = Form(tool.Id);
        form.Details.Machine = machine.Id.ToString("D");

        var written = await WriteAsync(database, form);

        Assert.Equal(
            ("capability", "Windows[0].Upper"),
            (Assert.Single(written.Refusals).Code, written.Refusals[0].Field)
        );
    }

    [Fact]
    public async Task HandleAsync_ManyFaults_NamesEachFieldAndSavesNothing()
    {
        await using var database = await SiteDatabase.CreateAsync(server);
        var tool = SampleTools.Design();
        await database.AddAsync(tool);
        var form = Form(tool.Id);
        form.Thickness = "1";
        form.Windows.Single(w => w.Parameter == WeldParameter.SpindleSpeed).Lower = "810";
        form.Details.OuterDiameter = "0";
        form.Details.Particulars[0].Text = new string('x', Particular.LongestText + 1);

        var written = await WriteAsync(database, form);

        Assert.Equal(
            ["Details.OuterDiameter", "Details.Particulars[0].Text", "Windows[0].SetPoint"],
            (await WriteAsync(database, Thick(form))).Refusals.Select(r => r.Field).Order()
        );
        Assert.Equal(nameof(form.ToolDesignId), Assert.Single(written.Refusals).Field);
        Assert.Equal(0, await database.ReadAsync(db => db.ProcedureRevisions.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_SketchThatIsNoPaper_IsRefused()
    {
        await using var database = await SiteDatabase.CreateAsync(server);
        var tool = SampleTools.Design();
        await database.AddAsync(tool);
        var form = Form(tool.Id);
        form.Details.Sketch = File("MZ a program", "sketch.pdf");

        var written = await WriteAsync(database, form);

        Assert.Equal("Details.Sketch", Assert.Single(written.Refusals).Field);
    }

    [Fact]
    public async Task HandleAsync_Operator_Refused()
    {
        await using var database = await SiteDatabase.CreateAsync(server);
        var tool = SampleTools.Design();
        await database.AddAsync(tool);

        var written = await WriteAsync(database, Form(tool.Id), SamplePeople.Operator);

        Assert.Equal("role", Assert.Single(written.Refusals).Code);
    }

    [Fact]
    public async Task HandleAsync_UnknownRevision_Refused()
    {
        await using var database = await SiteDatabase.CreateAsync(server);

        var written = await new WriteProcedureHandler(database, TimeProvider.System).HandleAsync(
            Guid.CreateVersion7(SampleTime.Start),
            Form(Guid.Empty),
            SamplePeople.Engineer,
            CancellationToken.None
        );

        Assert.Equal("procedure", Assert.Single(written.Refusals).Code);
    }

    [Fact]
    public void ReadWhatStands_HalfTypedForm_KeepsWhatCanBeRead()
    {
        var form = Form(Guid.Empty);
        form.Thickness = "abc";
        form.Windows.Single(w => w.Parameter == WeldParameter.TravelSpeed).Upper = null;
        form.Windows.Single(w => w.Parameter == WeldParameter.AxialForce).SetPoint = "8 kN";

        var content = TypedProcedure.ReadWhatStands(form);

        Assert.NotNull(content.WindowOf(WeldParameter.TravelSpeed));
        Assert.Null(content.WindowOf(WeldParameter.AxialForce));
        Assert.Equal(0, content.Thickness.Millimetres);
    }

    private static WriteProcedureForm Thick(WriteProcedureForm form)
    {
        form.Thickness = "3";
        return form;
    }

    private static WriteProcedureForm Form(Guid tool)
    {
        var form = WriteProcedureForm.Of(SampleProcedures.Draft(SampleTools.Design()));
        form.ToolDesignId = tool;
        form.FillRows();
        return form;
    }

    private static FormFile File(string content, string name)
    {
        var bytes = Encoding.ASCII.GetBytes(content);
        return new FormFile(new MemoryStream(bytes), 0, bytes.Length, "Sketch", name);
    }

    private static Task<Outcome<ProcedureRevision>> WriteAsync(
        SiteDatabase database,
        WriteProcedureForm form,
        Actor? actor = null
    ) =>
        new WriteProcedureHandler(database, TimeProvider.System).HandleAsync(
            null,
            form,
            actor ?? SamplePeople.Engineer,
            CancellationToken.None
        );
}
