using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Compliance;

/// <summary>Where the evidence of a requirement is looked for, when it takes more than a line.</summary>
internal static class RequirementFinders
{
    public static ComplianceEvidence Qualified(VesselFile file)
    {
        var used = file.Runs.Select(r => r.ProcedureRevisionId).ToHashSet();
        return ComplianceEvidence.ForEach(
            file.All<ProcedureRevision>().Where(p => used.Contains(p.Id)),
            p =>
                file.All<QualificationRecord>()
                    .FirstOrDefault(q =>
                        q.State == QualificationState.Signed && q.ProcedureNumber == p.Number
                    ),
            p => $"No signed qualification of {p.Label} is among the records.",
            "Nothing is welded yet."
        );
    }

    public static ComplianceEvidence HeatTreated(VesselFile file)
    {
        var treated = file.All<HeatTreatment>().ToList();
        return treated.Count == 0
            ? ComplianceEvidence.NotAsked("No heat treatment of it or its parts is on record.")
            : ComplianceEvidence.ForEach(treated, t => t, _ => "", "");
    }

    public static ComplianceEvidence Departures(VesselFile file) =>
        file.Findings.Count == 0
            ? ComplianceEvidence.NotAsked("No departure is on record.")
            : ComplianceEvidence.ForEach(
                file.Findings,
                f => f.State == FindingState.Closed ? f : null,
                f => $"{f.Label} is {Finding.StateWord(f.State)}.",
                ""
            );

    public static ComplianceEvidence Repairs(VesselFile file)
    {
        var repairs = file.Runs.Where(r => r.Repair is not null).ToList();
        return repairs.Count == 0
            ? ComplianceEvidence.NotAsked("No repair weld is on record.")
            : ComplianceEvidence.ForEach(
                repairs,
                r =>
                    file.Findings.FirstOrDefault(f =>
                        f.Id == r.Repair!.Finding.Id && f.State == FindingState.Closed
                    ),
                r => $"{r.Repair!.Finding.Label}, for which {r.Label} was welded, is not closed.",
                ""
            );
    }

    public static ComplianceEvidence Visual(VesselFile file) =>
        ComplianceEvidence.ForEach(
            [PlannedExamination.Visual],
            method => Examination(file, method),
            _ => "No visual examination is signed.",
            ""
        );

    public static ComplianceEvidence Planned(VesselFile file) =>
        file.Design.Examinations is not { Count: > 0 } planned
            ? ComplianceEvidence.NotAsked("The design lays down no plan of examinations.")
            : ComplianceEvidence.ForEach(
                planned.Select(p => p.Method).Distinct(),
                method => Examination(file, method),
                method => $"No {ExaminationPlan.Word(method)} is on record.",
                ""
            );

    public static ComplianceEvidence Calibrated(VesselFile file) =>
        ComplianceEvidence.ForEach(
            file.All<TestRecord>()
                .Where(t => t is { Withdrawal: null, SignedAt: not null })
                .Where(t => t.VesselId == file.Vessel.Id),
            t => t.Instruments is { Count: > 0 } ? t : null,
            t => $"{t.Label} names no instrument.",
            "Nothing is tested yet."
        );

    public static ComplianceEvidence Samples(VesselFile file) =>
        file.Design.Samples is null
            ? ComplianceEvidence.NotAsked("The design asks for no samples.")
            : ComplianceEvidence.ForEach(
                file.All<ProductionLot>(),
                l => l.State == LotState.Accepted ? l : null,
                l => $"{l.Label} is not accepted.",
                "The vessel is in no production lot."
            );

    public static ComplianceEvidence Parts(VesselFile file) =>
        ComplianceEvidence.ForEach(
            file.Vessel.Components,
            c => file.All<MaterialLot>().FirstOrDefault(l => l.Id == c.MaterialLotId),
            c => $"The lot of {c.Name} {c.Serial} is not among the records.",
            "No part is entered."
        );

    public static ComplianceEvidence Accepted(VesselFile file) =>
        ComplianceEvidence.ForEach(
            [StepKind.Acceptance],
            kind =>
                file.All<StepSignOff>()
                    .LastOrDefault(s => s.VesselId == file.Vessel.Id && s.StepKind == kind),
            _ => "The vessel is not accepted.",
            ""
        );

    public static ComplianceEvidence Signed(VesselFile file) =>
        ComplianceEvidence.ForEach(
            file.Runs.Where(r => r.SignedAt is not null)
                .Cast<Record>()
                .Concat(
                    file.All<TestRecord>()
                        .Where(t => t.VesselId == file.Vessel.Id && t.SignedAt is not null)
                ),
            r => file.All<Signature>().LastOrDefault(s => s.SignedId == r.Id),
            r => $"The signature under {r.Label} is not among the records.",
            "Nothing is signed yet."
        );

    private static Record? Examination(VesselFile file, PlannedExamination method) =>
        method switch
        {
            PlannedExamination.Leak => Standing<LeakTest>(file),
            PlannedExamination.Pressure => Standing<PressureTest>(file),
            PlannedExamination.Section => Standing<Sectioning.SectionExamination>(file),
            _ => file.All<StepSignOff>()
                .LastOrDefault(s =>
                    s.VesselId == file.Vessel.Id && s.Examination?.Method == method
                ),
        };

    private static T? Standing<T>(VesselFile file)
        where T : TestRecord =>
        file.All<T>()
            .LastOrDefault(t =>
                t.VesselId == file.Vessel.Id && t is { SignedAt: not null, Withdrawal: null }
            );
}
