using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Reading;

/// <summary>The page of a record that another one names.</summary>
public static class RecordLinks
{
    /// <summary>Address of its page; null when it has none of its own, or when there is no record.</summary>
    public static string? Of(RecordName? name) =>
        name?.Kind switch
        {
            "vessel" => Routes.Vessel(name.Label),
            "vessel-design" => Routes.Design(name.Id),
            "production-lot" => Routes.Lot(name.Id),
            "leak-test" => Routes.LeakTest(name.Id),
            "pressure-test" => Routes.PressureTest(name.Id),
            "concession" => Routes.Concession(name.Id),
            "finding" => Routes.Finding(name.Id),
            "weld-run" => Routes.Run(name.Id),
            "procedure-revision" => Routes.Procedure(name.Id),
            "qualification" => Routes.Qualification(name.Id),
            "certificate" => Routes.Certificate(name.Id),
            "section" => Routes.Section(name.Id),
            "laboratory-test" => Routes.LaboratoryTest(name.Id),
            "machine" => Routes.Machine(name.Id),
            "instrument" => Routes.Instrument(name.Id),
            "tool" => Routes.Tool(name.Id),
            "tool-design" => Routes.ToolDesign(name.Id),
            "material-lot" => Routes.MaterialLot(name.Id),
            "component" => Routes.Component(name.Id),
            "test-piece" => Routes.TestPiece(name.Id),
            "qualification-test" => Routes.Result(name.Id),
            "heat-treatment" => Routes.HeatTreatment(name.Id),
            _ => null,
        };
}
