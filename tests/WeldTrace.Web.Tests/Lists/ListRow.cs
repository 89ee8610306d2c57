using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Tests.Lists;

/// <summary>A list of the site.</summary>
/// <param name="Page">Its address.</param>
/// <param name="Csv">Address of the whole list as a file.</param>
/// <param name="Filter">One of its filters.</param>
/// <param name="Fits">What that filter finds something for in the demonstration.</param>
/// <param name="Misses">What it finds nothing for.</param>
internal sealed record ListRow(
    string Page,
    string Csv,
    string Filter,
    string Fits,
    string Misses = "no such thing"
)
{
    public static IReadOnlyList<ListRow> All { get; } =
    [
        new(Routes.Vessels, "/vessels.csv", "serial", "nr10-0001"),
        new(Routes.Trace, Routes.TraceCsv, TraceFields.Tool, "T-0141"),
        new(Routes.Lots, Routes.LotsCsv, "design", "nr"),
        new(Routes.Laboratory, Routes.LaboratoryCsv, "lot", "-"),
        new(Routes.Designs, Routes.DesignsCsv, "number", "reservoir"),
        new(Routes.Procedures, "/procedures.csv", "number", "wp"),
        new(Routes.Limits, Routes.LimitsCsv, "code", "a"),
        new(Routes.Qualifications, Routes.QualificationsCsv, "procedure", "wp"),
        new(Routes.Tools, "/tools.csv", "mark", "t"),
        new(Routes.ToolDesigns, Routes.ToolDesignsCsv, "material", "H13"),
        new(Routes.Tests, Routes.TestsCsv, "serial", "nr10-0001"),
        new(Routes.ProductionTests, Routes.ProductionTestsCsv, "machine", "a"),
        new(Routes.Findings, Routes.FindingsCsv, "serial", "nr10"),
        new(Routes.Concessions, Routes.ConcessionsCsv, "vessel", "nr10"),
        new(Routes.Equipment, Routes.MachinesCsv, "name-has", "bench"),
        new(Routes.Instruments, Routes.InstrumentsCsv, "mark", "g"),
        new(Routes.MaterialLots, Routes.MaterialLotsCsv, "alloy", "60"),
        new(Routes.Components, Routes.ComponentsCsv, "serial", "1"),
        new(Routes.HeatTreatments, Routes.HeatTreatmentsCsv, "furnace", "a"),
        new(Routes.People, Routes.PeopleCsv, "name", "a"),
        new(Routes.Certificates, Routes.CertificatesCsv, "person", "a"),
        new(Routes.Ledger, Routes.LedgerCsv, "kind", "weld-run"),
    ];
}
