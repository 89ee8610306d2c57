using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Welding;

/// <summary>The records behind each rule of the gate.</summary>
internal static class GateRecords
{
    public static IReadOnlyList<RecordName> Behind(string ruleId, WeldGateFacts facts)
    {
        IEnumerable<Record?> records = ruleId switch
        {
            "F1" =>
            [
                facts.Vessel,
                .. facts.Findings.Where(f => f.Stops(facts.Step.Sequence)),
                .. facts.Runs.Where(r => !r.IsSealed),
            ],
            "F2" => [facts.Revision, facts.Design],
            "F3" => [facts.Revision, facts.Design, facts.Machine, facts.Tool],
            "F4" => facts.Certificates.Where(c => c.Attests == CertificateKind.WeldingOperator),
            "F5" => [facts.Machine, .. facts.Instruments],
            "F6" => [facts.Tool, facts.ToolDesign],
            "F7" => [.. facts.Material.Lots, .. facts.Material.HeatTreatments],
            "F8" =>
            [
                facts.Preparation.CleaningOf(facts.Joint.Code),
                facts.Preparation.FitUpOf(facts.Joint.Code),
            ],
            "F9" => facts.Runs.Where(r => r.JointCode == facts.Joint.Code),
            "F20" => [facts.Lot],
            "F21" => [facts.Production?.Last, facts.Machine],
            _ => [],
        };
        return
        [
            .. facts.Revision?.Qualified is { } qualified && ruleId == "F3"
                ? [new RecordName("qualification", qualified.Id, qualified.Number)]
                : Array.Empty<RecordName>(),
            .. records.OfType<Record>().Select(RecordName.Of),
        ];
    }
}
