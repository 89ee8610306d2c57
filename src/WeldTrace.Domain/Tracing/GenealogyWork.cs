using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Domain.Tracing;

// What was done to the vessel, by whom and with what.
internal sealed partial class GenealogyBuilder
{
    private void AddWork()
    {
        foreach (var cleaning in All<JointCleaning>().OrderBy(c => c.CleanedAt))
        {
            var node = Work(
                GenealogyGroup.Preparation,
                cleaning,
                cleaning.CleanedAt,
                cleaning.Method
            );
            Link(node, Person(cleaning.CleanedById, cleaning.CleanedByName), "cleaned by");
        }

        foreach (var fitUp in All<JointFitUp>().OrderBy(f => f.MeasuredAt))
        {
            var node = Work(
                GenealogyGroup.Preparation,
                fitUp,
                fitUp.MeasuredAt,
                $"gap {fitUp.Gap}, mismatch {fitUp.Mismatch}"
            );
            Link(node, Person(fitUp.MeasuredById, fitUp.MeasuredByName), "measured by");
            Measure(node, fitUp.InstrumentId, fitUp.InstrumentMark, fitUp.MeasuredAt);
        }

        foreach (var run in All<WeldRun>().OrderBy(r => r.StartedAt))
        {
            AddRun(run);
        }

        foreach (var test in All<TestRecord>().OrderBy(t => t.TestedAt))
        {
            AddTest(test);
        }

        foreach (var signOff in All<StepSignOff>().OrderBy(s => s.At))
        {
            AddSignOff(signOff);
        }

        foreach (var test in All<LaboratoryTest>().OrderBy(t => t.SignedAt))
        {
            AddLaboratory(test);
        }
    }

    private void AddRun(WeldRun run)
    {
        var node = Work(GenealogyGroup.Runs, run, run.StartedAt, WeldRun.StateWord(run.State));
        Link(node, Procedure(run.ProcedureRevisionId, run.ProcedureLabel), "welded by procedure");
        Link(node, ToolNode(run), "welded with");
        Link(
            node,
            Add(
                GenealogyGroup.Machines,
                new RecordName("machine", run.MachineId, run.MachineName),
                ""
            ),
            "welded on"
        );
        var welder = Person(run.OperatorId, run.OperatorName);
        Link(node, welder, "welded by");
        Certify(
            node,
            welder,
            run.OperatorId,
            run.StartedAt,
            c => c.Attests == CertificateKind.WeldingOperator
        );
        foreach (var behind in run.Gate.SelectMany(v => v.Behind ?? []).Distinct())
        {
            AddGateRecord(node, behind, run.StartedAt);
        }
    }

    // The instruments and the production test by which the rules before the run were judged.
    private void AddGateRecord(GenealogyNode run, RecordName behind, DateTimeOffset at)
    {
        switch (behind.Kind)
        {
            case "instrument":
                Measure(run, behind.Id, behind.Label, at);
                break;
            case "production-test":
                Link(run, Add(GenealogyGroup.ProductionTests, behind, ""), "rests on");
                break;
        }
    }

    private GenealogyNode ToolNode(WeldRun run)
    {
        var tool = Find<Tool>(run.ToolId);
        var node = Add(
            GenealogyGroup.Tools,
            new RecordName("tool", run.ToolId, run.ToolMark),
            tool?.DesignLabel ?? ""
        );
        if (tool is not null)
        {
            Link(node, ToolDesignNode(tool.DesignId, tool.DesignLabel), "made to");
        }

        return node;
    }

    private void AddTest(TestRecord test)
    {
        var node = Work(
            GenealogyGroup.Tests,
            test,
            test.TestedAt,
            test.Withdrawal is { } withdrawal
                ? $"withdrawn: {withdrawal.Reason}"
                : TestRecord.VerdictWord(test.Verdict)
        );
        var tester = Person(test.InspectorId, test.InspectorName);
        Link(node, tester, "tested by");
        Certify(
            node,
            tester,
            test.InspectorId,
            test.TestedAt,
            c => c.Text.Examiner?.Method == MethodOf(test)
        );
        foreach (var used in test.Instruments ?? [])
        {
            Measure(node, used.Id, used.Mark, test.TestedAt);
        }
    }

    private void AddLaboratory(LaboratoryTest test)
    {
        var node = Work(
            GenealogyGroup.Laboratory,
            test,
            test.SignedAt,
            $"{TestRecord.VerdictWord(test.Verdict)}{(test.VesselId is null ? $", for lot {test.ProductionLot}" : "")}"
        );
        var tester = Person(test.TesterId, test.TesterName);
        Link(node, tester, "tested by");
        Certify(
            node,
            tester,
            test.TesterId,
            test.SignedAt,
            c => c.Text.Examiner?.Method == ExaminationMethod.Mechanical
        );
        foreach (var used in test.Instruments)
        {
            Measure(node, used.Id, used.Mark, test.SignedAt);
        }
    }

    private void AddSignOff(StepSignOff signOff)
    {
        var isExamination = signOff.StepKind == StepKind.Examination;
        var node = Work(
            isExamination ? GenealogyGroup.Tests : GenealogyGroup.SignOffs,
            signOff,
            signOff.At,
            isExamination ? signOff.Examination?.Title ?? "examination" : ""
        );
        var person = Person(signOff.PersonId, signOff.PrintedName);
        Link(node, person, isExamination ? "examined by" : "confirmed by");
        if (signOff.Examination is { } examination)
        {
            Certify(
                node,
                person,
                signOff.PersonId,
                signOff.At,
                c => c.Text.Examiner?.Method == examination.Certified
            );
        }
    }

    private static ExaminationMethod MethodOf(TestRecord test) =>
        test switch
        {
            LeakTest => ExaminationMethod.Leak,
            PressureTest => ExaminationMethod.Pressure,
            _ => ExaminationMethod.Macroscopic,
        };

    private GenealogyNode Work(
        GenealogyGroup group,
        Record record,
        DateTimeOffset at,
        string detail
    )
    {
        var node = Add(
            group,
            record,
            $"{dayOf(at):yyyy-MM-dd}{(detail.Length == 0 ? "" : $", {detail}")}"
        );
        Link(Node(vessel), node, GenealogyGroups.Word(group));
        return node;
    }
}
