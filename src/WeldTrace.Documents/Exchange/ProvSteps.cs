using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Documents.Exchange;

/// <summary>What rests on what: pWPS, qualification record and WPS; procedure, run and its result; test and finding; record and signature.</summary>
internal static class ProvSteps
{
    public static void Add(ProvDocument document, ExchangeSource source)
    {
        foreach (var record in source.Records.OrderBy(r => r.Id))
        {
            switch (record)
            {
                case ProcedureRevision revision:
                    Qualified(document, source, revision);
                    break;
                case QualificationRecord qualification:
                    Qualify(document, source, qualification);
                    break;
                case WeldRun run:
                    Weld(document, source, run);
                    break;
                case Finding { EvidenceId: { } evidence } finding:
                    Found(document, source, finding, evidence);
                    break;
                case TestRecord { Withdrawal: not null } test:
                    Withdraw(document, source, test);
                    break;
                case Signature signature:
                    Sign(document, source, signature);
                    break;
            }
        }
    }

    /// <summary>The WPS came from the qualification record.</summary>
    private static void Qualified(
        ProvDocument document,
        ExchangeSource source,
        ProcedureRevision revision
    )
    {
        var wps = source.First(revision.Id, r => r.ContainsKey("qualified"));
        if (
            wps is not null
            && revision.Qualified is { } by
            && Newest(source, by.Id, wps.Number) is { } record
        )
        {
            document.Derive(ProvDocument.Version(wps), ProvDocument.Version(record));
        }
    }

    /// <summary>The qualification record came from the pWPS as it was then, the test pieces and their tests.</summary>
    private static void Qualify(
        ProvDocument document,
        ExchangeSource source,
        QualificationRecord qualification
    )
    {
        var (planned, now) = (
            source.Of(qualification.Id).FirstOrDefault(),
            source.Of(qualification.Id).LastOrDefault()
        );
        if (planned is null || now is null)
        {
            return;
        }

        var pieces = source
            .Records.Where(r =>
                r is TestPiece piece && piece.QualificationId == qualification.Id
                || r is SpecimenTest test && test.QualificationId == qualification.Id
            )
            .Select(r => Newest(source, r.Id, now.Number));
        var pwps = Newest(source, qualification.ProcedureRevisionId, planned.Number);
        foreach (var behind in pieces.Prepend(pwps).OfType<LedgerEntry>())
        {
            document.Derive(ProvDocument.Version(now), ProvDocument.Version(behind));
        }
    }

    /// <summary>The operator welded by the WPS as it was then.</summary>
    private static void Weld(ProvDocument document, ExchangeSource source, WeldRun run)
    {
        if (
            source.Of(run.Id).FirstOrDefault() is { } begun
            && Newest(source, run.ProcedureRevisionId, begun.Number) is { } plan
        )
        {
            document.Relate(
                "wasAssociatedWith",
                ("activity", ProvDocument.Act(begun)),
                ("agent", ProvDocument.Name(begun.ActorId)),
                ("plan", ProvDocument.Version(plan))
            );
        }
    }

    private static void Found(
        ProvDocument document,
        ExchangeSource source,
        Finding finding,
        Guid evidence
    )
    {
        if (
            source.Of(finding.Id).FirstOrDefault() is { } opened
            && (Newest(source, evidence, opened.Number) ?? source.Of(evidence).FirstOrDefault())
                is { } test
        )
        {
            document.Derive(ProvDocument.Version(opened), ProvDocument.Version(test));
        }
    }

    private static void Withdraw(ProvDocument document, ExchangeSource source, TestRecord test)
    {
        if (source.First(test.Id, t => t.ContainsKey("withdrawal")) is { RecordVersion: > 1 } act)
        {
            document.Relate(
                "wasInvalidatedBy",
                ("entity", ProvDocument.Version(test.Id, act.RecordVersion - 1)),
                ("activity", ProvDocument.Act(act)),
                ("time", LedgerTime.Print(act.At))
            );
        }
    }

    private static void Sign(ProvDocument document, ExchangeSource source, Signature signature)
    {
        var signed = source
            .Of(signature.SignedId)
            .FirstOrDefault(e => e.RecordVersion == signature.SignedVersion);
        if (signed is not null && source.Of(signature.Id).FirstOrDefault() is { } under)
        {
            document.Derive(ProvDocument.Version(under), ProvDocument.Version(signed));
        }
    }

    /// <summary>The version that a record had when the entry of a number was written; null when there was none.</summary>
    private static LedgerEntry? Newest(ExchangeSource source, Guid id, long number) =>
        source.Of(id).LastOrDefault(e => e.Number < number);
}
