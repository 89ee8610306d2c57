using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;

namespace WeldTrace.Web;

/// <summary>Every address of the application; pages repeat them in their <c>@page</c> line.</summary>
public static partial class Routes
{
    public const string Home = "/";
    public const string SignIn = "/sign-in";
    public const string SignOut = "/sign-out";
    public const string FirstRun = "/first-run";
    public const string ChangePassword = "/me/password";
    public const string Me = "/me";
    public const string SecondFactor = "/me/second-factor";
    public const string Passkeys = "/me/passkeys";
    public const string Sessions = "/me/sessions";
    public const string Pin = "/me/pin";
    public const string ChangePerson = "/sign-in/tablet";
    public const string SharedTablets = "/site/tablets";
    public const string Vessels = "/vessels";
    public const string NewVessel = "/vessels/new";
    public const string Trace = "/trace";
    public const string TraceCsv = "/trace.csv";
    public const string RecallList = "/trace/recall.pdf";
    public const string Archive = "/archive";
    public const string Histories = "/histories";
    public const string OrderHistories = "/histories/new";
    public const string Designs = "/designs";
    public const string DesignsCsv = "/designs.csv";
    public const string NewDesign = "/designs/new";
    public const string Procedures = "/procedures";
    public const string NewProcedure = "/procedures/new";
    public const string ProcedureFigures = "/procedures/figures";
    public const string Limits = "/procedures/limits";
    public const string LimitsCsv = "/procedures/limits.csv";
    public const string NewLimits = "/procedures/limits/new";
    public const string Qualifications = "/procedures/qualifications";
    public const string QualificationsCsv = "/procedures/qualifications.csv";
    public const string Tools = "/tools";
    public const string NewTool = "/tools/new";
    public const string ToolDesigns = "/tools/designs";
    public const string ToolDesignsCsv = "/tools/designs.csv";
    public const string NewToolDesign = "/tools/designs/new";
    public const string Tests = "/tests";
    public const string Laboratory = "/tests/laboratory";
    public const string LaboratoryCsv = "/tests/laboratory.csv";
    public const string TestsCsv = "/tests.csv";
    public const string ProductionTests = "/tests/production";
    public const string ProductionTestsCsv = "/tests/production.csv";
    public const string NewProductionTest = "/tests/production/new";
    public const string Lots = "/lots";
    public const string LotsCsv = "/lots.csv";
    public const string NewLot = "/lots/new";
    public const string Findings = "/findings";
    public const string FindingsCsv = "/findings.csv";
    public const string QualityFigures = "/findings/figures";
    public const string Concessions = "/concessions";
    public const string ConcessionsCsv = "/concessions.csv";
    public const string Equipment = "/equipment";
    public const string MachinesCsv = "/equipment/machines.csv";
    public const string NewMachine = "/equipment/machines/new";
    public const string MaterialLots = "/equipment/material";
    public const string MaterialLotsCsv = "/equipment/material.csv";
    public const string Components = "/equipment/components";
    public const string ComponentsCsv = "/equipment/components.csv";
    public const string NewComponent = "/equipment/components/new";
    public const string HeatTreatments = "/equipment/heat-treatments";
    public const string HeatTreatmentsCsv = "/equipment/heat-treatments.csv";
    public const string NewHeatTreatment = "/equipment/heat-treatments/new";
    public const string NewMaterialLot = "/equipment/material/new";
    public const string Labels = "/labels";
    public const string LabelSheet = "/labels/sheet.pdf";
    public const string OpenCode = "/open";
    public const string ImportTools = "/tools/import";
    public const string ImportLots = "/equipment/material/import";
    public const string ImportInstruments = "/equipment/instruments/import";
    public const string People = "/people";
    public const string PeopleCsv = "/people.csv";
    public const string NewPerson = "/people/new";
    public const string ImportPeople = "/people/import";
    public const string Certificates = "/people/certificates";
    public const string CertificatesCsv = "/people/certificates.csv";
    public const string NewCertificate = "/people/certificates/new";
    public const string Instruments = "/equipment/instruments";
    public const string InstrumentsCsv = "/equipment/instruments.csv";
    public const string NewInstrument = "/equipment/instruments/new";
    public const string Ledger = "/ledger";
    public const string LedgerCsv = "/ledger.csv";
    public const string LedgerCheck = "/ledger/check";
    public const string LedgerCheckState = "/ledger/check/state";
    public const string Checkpoints = "/ledger/checkpoints";
    public const string CheckpointFilePattern = "/ledger/checkpoints/{treeSize:long}/{file}";
    public const string SiteKey = "/site/key";
    public const string Desk = "/desk";
    public const string DeskPassLayout = "/desk/pass-layout";
    public const string DeskWindow = "/desk/window-and-heat";
    public const string DeskVessel = "/desk/vessel";
    public const string DeskLeak = "/desk/leak-test";
    public const string DeskSafety = "/desk/test-safety";
    public const string DeskToolLife = "/desk/tool-life";
    public const string DeskSample = "/desk/sample";
    public const string SystemTokens = "/site/systems";
    public const string SiteSettings = "/site";
    public const string Health = "/health";

    public static string WorkedOut(string calculation) => $"{Desk}/{calculation}/worked-out";

    public static string CalculationSheet(string calculation) => $"{Desk}/{calculation}/sheet.pdf";

    /// <summary>How a figure of a stored record was worked out.</summary>
    public static string Working(string kind, Guid id, string key) =>
        $"/worked-out/{kind}/{id:D}/{Uri.EscapeDataString(key)}";

    public static string Open(string code) => $"{OpenCode}?code={Uri.EscapeDataString(code)}";

    public static string Design(Guid id) => $"/designs/{id:D}";

    public static string EditDesign(Guid id) => $"/designs/{id:D}/edit";

    public static string Procedure(Guid id) => $"/procedures/{id:D}";

    public static string EditProcedure(Guid id) => $"/procedures/{id:D}/edit";

    public static string ProcedureSheet(Guid id) => $"/procedures/{id:D}/sheet.pdf";

    public static string CompareProcedures(Guid left, Guid right) =>
        $"/procedures/{left:D}/against/{right:D}";

    public static string PlanQualification(Guid revision) => $"/procedures/{revision:D}/qualify";

    public static string Qualification(Guid id) => $"{Qualifications}/{id:D}";

    public static string QualificationSheet(Guid id) => $"{Qualifications}/{id:D}/record.pdf";

    public static string BeginPiece(Guid id, string mark) =>
        $"{Qualifications}/{id:D}/pieces/{Uri.EscapeDataString(mark)}";

    public static string TestPiece(Guid id) => $"{Qualifications}/pieces/{id:D}";

    public static string TestPieceLog(Guid id) => $"{Qualifications}/pieces/{id:D}/log.csv";

    public static string EnterResult(Guid id, string planned) =>
        $"{Qualifications}/{id:D}/results/{Uri.EscapeDataString(planned)}";

    public static string Result(Guid id) => $"{Qualifications}/results/{id:D}";

    public static string LimitTable(Guid id) => $"{Limits}/{id:D}";

    public static string ReviseLimits(Guid id) => $"{Limits}/{id:D}/revise";

    public static string NewLimitsOf(LimitKind kind) => $"{NewLimits}?kind={kind}";

    public static string AcrossRunsOf(Guid procedure, WeldParameter parameter) =>
        $"{AcrossRuns}?procedure={procedure:D}&parameter={parameter}";

    public const string AcrossRuns = "/procedures/runs";
    public const string OverlayRuns = "/procedures/runs/overlay";
    public const string OverlaySamples = "/procedures/runs/overlay/samples";

    public static string Run(Guid id) => $"/runs/{id:D}";

    public static string CorrectPhases(Guid id) => $"/runs/{id:D}/phases";

    public static string ReviewSignal(Guid run, string parameter) =>
        $"/runs/{run:D}/signals/{parameter}";

    public static string EndRun(Guid id) => $"/runs/{id:D}/end";

    public static string InterruptRun(Guid id) => $"/runs/{id:D}/interrupt";

    public static string BringLog(Guid id) => $"/runs/{id:D}/log";

    public static string LogUpload(Guid id) => $"/runs/{id:D}/log/file";

    public static string ReadLog(Guid id, Guid upload) => $"/runs/{id:D}/log/{upload:D}";

    public static string SignRun(Guid id) => $"/runs/{id:D}/sign";

    public static string TakeArrivedLog(Guid id, Guid arrival) =>
        $"/runs/{id:D}/log/arrived/{arrival:D}";

    public static string RunLogCsv(Guid id) => $"/runs/{id:D}/log.csv";

    public static string RunOriginal(Guid id) => $"/runs/{id:D}/log/original";

    public static string RunLogSamples(Guid id) => $"/runs/{id:D}/samples";

    public static string Tool(Guid id) => $"/tools/{id:D}";

    public static string InspectTool(Guid id) => $"{Tool(id)}/inspect";

    public static string ToolParts(Guid id) => $"{Tool(id)}/parts";

    public static string ToolDesign(Guid id) => $"/tools/designs/{id:D}";

    public static string ToolCard(Guid id) => $"/tools/{id:D}/card.pdf";

    public static string LeakTest(Guid id) => $"/tests/leak/{id:D}";

    public static string LeakReport(Guid id) => $"{LeakTest(id)}/report.pdf";

    public static string PressureReport(Guid id) => $"{PressureTest(id)}/report.pdf";

    public static string PressureTest(Guid id) => $"/tests/pressure/{id:D}";

    public static string Section(Guid id) => $"/tests/sections/{id:D}";

    public static string Lot(Guid id) => $"{Lots}/{id:D}";

    public static string EnterLaboratory(string kind) => $"{Laboratory}/new/{kind}";

    public static string EnterLaboratoryOf(string kind, string serial) =>
        $"{EnterLaboratory(kind)}?vessel={Uri.EscapeDataString(serial)}";

    public static string LaboratoryTest(Guid id) => $"{Laboratory}/{id:D}";

    public static string LaboratoryReport(Guid id) => $"{Laboratory}/{id:D}/report.pdf";

    public static string MeasureSection(Guid id) => $"{Section(id)}/measure";

    public static string SectionPicture(Guid id) => $"{Section(id)}/picture.jpg";

    public static string ExaminationPaper(Guid id) => $"/tests/examinations/{id:D}/report.pdf";

    public static string SectionReport(Guid id) => $"{Section(id)}/report.pdf";

    public static string Finding(Guid id) => $"/findings/{id:D}";

    public static string FindingReport(Guid id) => $"{Finding(id)}/report.pdf";

    public static string Containment(Guid id) => $"{Finding(id)}/containment";

    public static string ContainmentCsv(Guid id) => $"{Finding(id)}/containment.csv";

    public static string Person(Guid id) => $"/people/{id:D}";

    public static string Badge(Guid person) => $"/people/{person:D}/badge";

    public static string Certificate(Guid id) => $"/people/certificates/{id:D}";

    public static string NewCertificateOf(CertificateKind kind) => $"{NewCertificate}?kind={kind}";

    public static string Instrument(Guid id) => $"/equipment/instruments/{id:D}";

    public static string Machine(Guid id) => $"/equipment/machines/{id:D}";

    public static string ReportMachine(Guid id) => $"{Machine(id)}/report";

    public static string MachineTestWeld(Guid id) => $"{Machine(id)}/test-weld";

    public static string PushLogs(Guid id) => $"/equipment/machines/{id:D}/push";

    public static string MachineMaintenance(Guid id) => $"{Machine(id)}/maintenance";

    public static string MachineCapability(Guid id) => $"{Machine(id)}/capability";

    public static string Component(Guid id) => $"{Components}/{id:D}";

    public static string HeatTreatment(Guid id) => $"{HeatTreatments}/{id:D}";

    public static string MaterialLot(Guid id) => $"/equipment/material/{id:D}";

    public static string CheckpointFile(long treeSize, string file) =>
        FormattableString.Invariant($"{Checkpoints}/{treeSize}/{file}");

    public static string LedgerEntry(long number) =>
        FormattableString.Invariant($"{Ledger}/{number}");

    public static string Attachment(string sha256) => $"/attachments/{sha256}";
}
