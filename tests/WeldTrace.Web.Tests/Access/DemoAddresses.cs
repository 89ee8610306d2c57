using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Persistence;
using WeldTrace.Web.Features.Labels;
using WeldTrace.Web.Features.LedgerView.Checkpoints;
using WeldTrace.Web.Tests.Features.Trace.Histories;
using Record = WeldTrace.Domain.Records.Record;

namespace WeldTrace.Web.Tests.Access;

/// <summary>An address in the demonstration for each pattern of an endpoint that names a record.</summary>
internal static class DemoAddresses
{
    public static async Task<IReadOnlyDictionary<string, string>> ReadAsync(DemoSite site)
    {
        var addresses = await site.ReadAsync(ReadAsync);
        // The auditor's own; who else sees it is what the table says.
        var order = await DemoOrders.ReadyAsync(site, "auditor", DemoOrders.Small);
        addresses["/histories/{Id}"] = Routes.HistoryOrder(order.Id);
        addresses["/histories/{id}/state"] = Routes.HistoryState(order.Id);
        addresses["/histories/{id}/histories.zip"] = Routes.HistoryFile(order.Id);
        return addresses;
    }

    private static async Task<Dictionary<string, string>> ReadAsync(WeldTraceDbContext db)
    {
        Dictionary<string, string> addresses = [];
        AddVessels(addresses);
        AddRun(addresses, (await db.WeldRuns.FirstAsync(r => r.Log != null)).Id);
        await AddProceduresAsync(addresses, db);
        await AddEquipmentAsync(addresses, db);
        var person = await db.People.FirstAsync(p => p.SignInName == "auditor");
        addresses["/people/{Id}"] = Routes.Person(person.Id);
        addresses["/people/{id}/badge"] = Routes.Badge(person.Id);
        addresses["/people/certificates/{Id}"] = Routes.Certificate(await IdAsync(db.Certificates));
        addresses["/designs/{Id}"] = Routes.Design(await IdAsync(db.VesselDesigns));
        addresses["/designs/{Id}/edit"] = Routes.EditDesign(await IdAsync(db.VesselDesigns));
        addresses["/tests/leak/{Id}"] = Routes.LeakTest(await IdAsync(db.LeakTests));
        addresses["/tests/pressure/{Id}"] = Routes.PressureTest(await IdAsync(db.PressureTests));
        addresses["/tests/leak/{id}/report.pdf"] = Routes.LeakReport(await IdAsync(db.LeakTests));
        addresses["/tests/pressure/{id}/report.pdf"] = Routes.PressureReport(
            await IdAsync(db.PressureTests)
        );
        var tested = await IdAsync(db.LaboratoryTests);
        addresses["/tests/laboratory/{Id}"] = Routes.LaboratoryTest(tested);
        addresses["/tests/laboratory/{id}/report.pdf"] = Routes.LaboratoryReport(tested);
        addresses["/tests/laboratory/new/{Kind}"] = Routes.EnterLaboratory(
            nameof(TestKind.Hardness)
        );
        var section = await IdAsync(db.Sections);
        addresses["/tests/sections/{Id}"] = Routes.Section(section);
        addresses["/tests/sections/{Id}/measure"] = Routes.MeasureSection(section);
        addresses["/tests/sections/{id}/picture.jpg"] = Routes.SectionPicture(section);
        addresses["/tests/sections/{id}/tiles/{level}/{x}/{y}"] =
            $"{Routes.Section(section)}/tiles/0/0/0";
        addresses["/tests/examinations/{id}/report.pdf"] = Routes.ExaminationPaper(
            (await db.StepSignOffs.ToListAsync()).First(s => s.Examination is not null).Id
        );
        addresses["/tests/sections/{id}/report.pdf"] = Routes.SectionReport(section);
        addresses["/findings/{Id}"] = Routes.Finding(
            await IdAsync(db.Findings.Where(f => f.State == FindingState.Open))
        );
        addresses["/desk/{Name}/worked-out"] = Routes.WorkedOut("vessel");
        addresses["/desk/{name}/sheet.pdf"] = Routes.CalculationSheet("vessel");
        var finding = await IdAsync(db.Findings);
        addresses["/findings/{Id}/containment"] = Routes.Containment(finding);
        addresses["/findings/{id}/report.pdf"] = Routes.FindingReport(finding);
        addresses["/findings/{id}/containment.csv"] = Routes.ContainmentCsv(finding);
        addresses["/lots/{Id}"] = Routes.Lot(await IdAsync(db.ProductionLots));
        addresses["/concessions/{Id}"] = Routes.Concession(await IdAsync(db.Concessions));
        addresses["/ledger/{Number}"] = Routes.LedgerEntry(1);
        addresses["/ledger/checkpoints/{treeSize}/{file}"] = Routes.CheckpointFile(
            await db.Checkpoints.MinAsync(c => c.TreeSize),
            CheckpointFiles.Statement
        );
        addresses["/archive/{id}/history.zip"] = Routes.ArchivedBundle(
            await IdAsync(db.VesselArchives)
        );
        addresses["/attachments/{sha256}"] = Routes.Attachment(
            (await db.Attachments.FirstAsync(a => a.MediaType.StartsWith("image/"))).Sha256
        );
        return addresses;
    }

    private static void AddVessels(Dictionary<string, string> addresses)
    {
        const string Whole = "NR10-0001";
        addresses["/vessels/{Serial}"] = Routes.Vessel(Whole);
        addresses["/vessels/{Serial}/genealogy"] = Routes.Genealogy(Whole);
        addresses["/vessels/{Serial}/compliance"] = Routes.Compliance(Whole);
        addresses["/vessels/{serial}/compliance.csv"] = Routes.ComplianceCsv(Whole);
        addresses["/vessels/{serial}/traveler.pdf"] = Routes.Traveler(Whole);
        addresses["/vessels/{serial}/certificate.pdf"] = Routes.InspectionCertificate(Whole);
        addresses["/vessels/{serial}/history.zip"] = Routes.Bundle(Whole);
        addresses["/vessels/{serial}/history.pdf"] = Routes.Book(Whole);
        addresses["/vessels/{Serial}/ship"] = Routes.ShipVessel(Whole);
        addresses["/vessels/{Serial}/archive"] = Routes.ArchiveVessel(ArchivedVessel.Serial);
        addresses["/vessels/{Serial}/steps/{Sequence}"] = Routes.Step(Whole, 10);
        addresses["/vessels/{Serial}/findings/new"] = Routes.ReportFinding("NR10-0009");
        addresses["/vessels/{Serial}/prepare/{JointCode}"] = Routes.PrepareJoint("NR10-0009", "J1");
        addresses["/vessels/{Serial}/sign-off/{Sequence}"] = Routes.SignOffStep("NR10-0002", 110);
        addresses["/vessels/{Serial}/pressure/{Sequence}"] = Routes.PressureStep("NR10-0003", 90);
        addresses["/vessels/{Serial}/leak/{Sequence}"] = Routes.LeakStep("NR10-0004", 80);
        addresses["/vessels/{Serial}/section/{Sequence}"] = Routes.SectionStep("NR10-0005", 70);
        addresses["/vessels/{Serial}/weld/{Sequence}"] = Routes.WeldStep("NR10-0006", 40);
        // Nothing of the demonstration waits to be repaired; the journey of a repair opens this page.
        addresses["/vessels/{Serial}/repair/{Number}"] = Routes.WeldRepair("NR10-0006", 1);
        addresses["/vessels/{Serial}/weld/{Sequence}/concession/{RuleId}"] = Routes.AskConcession(
            "NR10-0010",
            20,
            "F8"
        );
    }

    private static void AddRun(Dictionary<string, string> addresses, Guid run)
    {
        addresses["/runs/{Id}"] = Routes.Run(run);
        addresses["/runs/{Id}/end"] = Routes.EndRun(run);
        addresses["/runs/{Id}/interrupt"] = Routes.InterruptRun(run);
        addresses["/runs/{Id}/phases"] = Routes.CorrectPhases(run);
        addresses["/runs/{Id}/signals/{Parameter}"] = Routes.ReviewSignal(
            run,
            nameof(WeldParameter.AxialForce)
        );
        addresses["/runs/{Id}/log"] = Routes.BringLog(run);
        addresses["/runs/{id}/log/arrived/{arrival}"] = Routes.TakeArrivedLog(
            run,
            Guid.CreateVersion7()
        );
        addresses["/runs/{id}/log/file"] = Routes.LogUpload(run);
        addresses["/runs/{Id}/log/{Upload}"] = Routes.ReadLog(run, Guid.Empty);
        addresses["/runs/{Id}/sign"] = Routes.SignRun(run);
        addresses["/runs/{id}/log/original"] = Routes.RunOriginal(run);
        addresses["/runs/{id}/log.csv"] = Routes.RunLogCsv(run);
        addresses["/runs/{id}/samples"] = Routes.RunLogSamples(run);
        addresses["/procedures/runs/overlay/samples"] = $"{Routes.OverlaySamples}?run={run:D}";
    }

    private static async Task AddProceduresAsync(
        Dictionary<string, string> addresses,
        WeldTraceDbContext db
    )
    {
        var revision = await IdAsync(db.ProcedureRevisions);
        addresses["/procedures/{Id}"] = Routes.Procedure(revision);
        addresses["/procedures/{Id}/edit"] = Routes.EditProcedure(revision);
        addresses["/procedures/{id}/sheet.pdf"] = Routes.ProcedureSheet(revision);
        addresses["/procedures/{Id}/qualify"] = Routes.PlanQualification(revision);
        addresses["/procedures/{Id}/against/{Other}"] = Routes.CompareProcedures(
            revision,
            (await db.ProcedureRevisions.FirstAsync(r => r.Id != revision)).Id
        );
        var limits = await IdAsync(db.LimitTables);
        addresses["/procedures/limits/{Id}"] = Routes.LimitTable(limits);
        addresses["/procedures/limits/{Id}/revise"] = Routes.ReviseLimits(limits);
        var record = await db.Qualifications.FirstAsync();
        addresses["/procedures/qualifications/{Id}"] = Routes.Qualification(record.Id);
        addresses["/procedures/qualifications/{id}/record.pdf"] = Routes.QualificationSheet(
            record.Id
        );
        addresses["/procedures/qualifications/{Id}/pieces/{PieceMark}"] = Routes.BeginPiece(
            record.Id,
            record.Plan.Pieces[0].Mark
        );
        addresses["/procedures/qualifications/{Id}/results/{Planned}"] = Routes.EnterResult(
            record.Id,
            record.Plan.Tests[0].Id
        );
        var piece = await IdAsync(db.TestPieces.Where(p => p.Log != null));
        addresses["/procedures/qualifications/pieces/{Id}"] = Routes.TestPiece(piece);
        addresses["/procedures/qualifications/pieces/{id}/log.csv"] = Routes.TestPieceLog(piece);
        addresses["/procedures/qualifications/results/{Id}"] = Routes.Result(
            await IdAsync(db.SpecimenTests)
        );
    }

    private static async Task AddEquipmentAsync(
        Dictionary<string, string> addresses,
        WeldTraceDbContext db
    )
    {
        var tool = await IdAsync(db.Tools);
        addresses["/tools/{Id}"] = Routes.Tool(tool);
        addresses["/worked-out/{Kind}/{Id}/{Key}"] = Routes.Working("tools", tool, "left-1");
        addresses["/tools/{id}/card.pdf"] = Routes.ToolCard(tool);
        addresses["/tools/{Id}/inspect"] = Routes.InspectTool(tool);
        addresses["/tools/{Id}/parts"] = Routes.ToolParts(tool);
        addresses["/tools/designs/{Id}"] = Routes.ToolDesign(await IdAsync(db.ToolDesigns));
        var machine = await IdAsync(db.Machines);
        addresses["/equipment/machines/{Id}"] = Routes.Machine(machine);
        addresses["/equipment/machines/{Id}/report"] = Routes.ReportMachine(machine);
        addresses["/equipment/machines/{Id}/test-weld"] = Routes.MachineTestWeld(machine);
        addresses["/equipment/machines/{Id}/maintenance"] = Routes.MachineMaintenance(machine);
        addresses["/equipment/machines/{Id}/push"] = Routes.PushLogs(machine);
        addresses["/equipment/machines/{id}/logs"] = $"/equipment/machines/{machine:D}/logs";
        addresses["/equipment/machines/{id}/logs/{arrival}"] =
            $"/equipment/machines/{machine:D}/logs/{Guid.CreateVersion7():D}";
        addresses["/equipment/machines/{id}/logs/{arrival}/pieces"] =
            $"/equipment/machines/{machine:D}/logs/{Guid.CreateVersion7():D}/pieces";
        addresses["/equipment/machines/{Id}/capability"] = Routes.MachineCapability(machine);
        addresses["/equipment/instruments/{Id}"] = Routes.Instrument(await IdAsync(db.Instruments));
        addresses["/equipment/components/{Id}"] = Routes.Component(await IdAsync(db.Components));
        addresses["/equipment/material/{Id}"] = Routes.MaterialLot(await IdAsync(db.MaterialLots));
        addresses["/equipment/heat-treatments/{Id}"] = Routes.HeatTreatment(
            await IdAsync(db.HeatTreatments)
        );
        addresses[Routes.LabelSheet] = $"{Routes.LabelSheet}?kind={LabelKind.Tools}&id={tool}";
    }

    private static async Task<Guid> IdAsync<T>(IQueryable<T> records)
        where T : Record => (await records.OrderBy(r => r.Id).FirstAsync()).Id;
}
