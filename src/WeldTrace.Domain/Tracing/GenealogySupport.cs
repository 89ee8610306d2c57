using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Domain.Tracing;

// What was decided, and what the work rests on.
internal sealed partial class GenealogyBuilder
{
    private void AddDecisions()
    {
        foreach (var finding in All<Finding>().OrderBy(f => f.Number))
        {
            var node = Work(
                GenealogyGroup.Findings,
                finding,
                finding.OpenedAt,
                Finding.StateWord(finding.State)
            );
            if (
                finding is { EvidenceKind: { } kind, EvidenceId: { } id }
                && _nodes.GetValueOrDefault(Key(kind, id)) is { } evidence
            )
            {
                Link(evidence, node, "opened");
            }
        }

        foreach (var concession in All<Concession>().OrderBy(c => c.AskedBy.At))
        {
            var node = Work(
                GenealogyGroup.Concessions,
                concession,
                concession.AskedBy.At,
                Concession.StateWord(concession.State)
            );
            foreach (
                var run in All<WeldRun>()
                    .Where(r => r.Gate.Any(v => v.Concession?.Id == concession.Id))
            )
            {
                Link(Node(run), node, "waived by");
            }
        }
    }

    private void AddSignalReviews()
    {
        foreach (var review in All<SignalReview>().OrderBy(r => r.At))
        {
            var node = Work(
                GenealogyGroup.SignalReviews,
                review,
                review.At,
                SignalWords.Of(review.Conclusion)
            );
            if (Find<WeldRun>(review.RunId) is { } run)
            {
                Link(Node(run), node, "looked into by");
            }
        }
    }

    private GenealogyNode Procedure(Guid id, string label)
    {
        var node = Add(
            GenealogyGroup.Procedures,
            new RecordName("procedure-revision", id, label),
            ""
        );
        if (Find<ProcedureRevision>(id) is { } procedure)
        {
            Link(
                node,
                ToolDesignNode(procedure.Content.ToolDesignId, procedure.Content.ToolDesignLabel),
                "names"
            );
            if (procedure.Qualified is { } qualified)
            {
                Link(
                    node,
                    Add(
                        GenealogyGroup.Qualifications,
                        new RecordName("qualification", qualified.Id, qualified.Number),
                        $"signed {dayOf(qualified.SignedAt):yyyy-MM-dd}"
                    ),
                    "qualified by"
                );
            }
        }

        return node;
    }

    private void AddQualifications()
    {
        foreach (var piece in All<TestPiece>().OrderBy(p => p.StartedAt))
        {
            if (_nodes.GetValueOrDefault(Key("qualification", piece.QualificationId)) is { } record)
            {
                var node = Add(
                    GenealogyGroup.TestPieces,
                    piece,
                    $"{dayOf(piece.StartedAt):yyyy-MM-dd}, {TestPiece.StateWord(piece.State)}"
                );
                Link(record, node, "welded");
            }
        }

        foreach (var result in All<SpecimenTest>().OrderBy(t => t.SignedAt))
        {
            if (
                _nodes.GetValueOrDefault(Key("qualification", result.QualificationId)) is { } record
            )
            {
                var node = Add(
                    GenealogyGroup.Specimens,
                    result,
                    $"{dayOf(result.SignedAt):yyyy-MM-dd}, {TestRecord.VerdictWord(result.Verdict)}"
                );
                Link(record, node, "tested");
                if (_nodes.GetValueOrDefault(Key("test-piece", result.PieceId)) is { } piece)
                {
                    Link(piece, node, "gave");
                }
            }
        }
    }
}
