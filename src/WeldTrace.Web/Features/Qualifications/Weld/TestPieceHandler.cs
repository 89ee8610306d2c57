using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Features.Qualifications.Weld;

public sealed class FinishPieceForm
{
    public IFormFile? Log { get; set; }

    public string? Remark { get; set; }

    public string? Password { get; set; }
}

public sealed class DiscardPieceForm
{
    public string? Travelled { get; set; }

    public string? Reason { get; set; }

    public string? Password { get; set; }
}

/// <summary>A test piece with what it was planned as and the signatures under it.</summary>
public sealed record TestPieceView(
    TestPiece Piece,
    QualificationRecord Record,
    ProcedureRevision Revision,
    PlannedPiece Planned,
    IReadOnlyList<Signature> Signatures,
    LogHeader? Log
);

/// <summary>Shows a test piece, closes it with its process log, or discards it.</summary>
public sealed class TestPieceHandler(IDbContextFactory<WeldTraceDbContext> contexts, ActDesk desk)
{
    public const long MostLogBytes = 64L * 1024 * 1024;

    public async Task<TestPieceView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var piece = await db
            .TestPieces.AsNoTracking()
            .SingleOrDefaultAsync(p => p.Id == id, cancellation);
        if (piece is null)
        {
            return null;
        }

        var records = (await db.FindQualificationAsync(piece.QualificationId, cancellation))!;
        return new TestPieceView(
            piece,
            records.Record,
            records.Revision,
            records.Record.Plan.Pieces.First(p => p.Mark == piece.Mark),
            await db
                .Signatures.AsNoTracking()
                .Where(s => s.SignedId == id)
                .OrderBy(s => s.At)
                .ToListAsync(cancellation),
            await db.FindLogHeaderAsync(id, cancellation)
        );
    }

    public Task<Outcome> FinishAsync(
        Guid id,
        FinishPieceForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            new PostedAct<TestPiece>(id, (moment, token) => FinishAsync(moment, form, actor, token))
            {
                Unread = [.. FaultOf(form.Log)],
                Meaning = TestPiece.WeldedMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }

    public Task<Outcome> DiscardAsync(
        Guid id,
        DiscardPieceForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var travelled = entries.Number(
            form.Travelled,
            "mm",
            "Length travelled",
            nameof(form.Travelled)
        );
        return desk.DoAsync(
            new PostedAct<TestPiece>(
                id,
                async (moment, token) =>
                    moment.Record.Discard(
                        Length.FromMillimetres(travelled.InUnit()),
                        form.Reason ?? "",
                        await moment.Db.Tools.SingleAsync(t => t.Id == moment.Record.ToolId, token),
                        actor,
                        moment.At
                    )
            )
            {
                Unread = [.. entries.Refusals],
                Meaning = TestPiece.DiscardMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }

    private static async Task<Outcome> FinishAsync(
        ActMoment<TestPiece> moment,
        FinishPieceForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var (db, piece) = (moment.Db, moment.Record);
        if (piece.State != TestPieceState.Welding)
        {
            return Outcome.Refused(
                "state",
                $"{piece.Label} is {TestPiece.StateWord(piece.State)} already."
            );
        }

        var records = (await db.FindQualificationAsync(piece.QualificationId, cancellation))!;
        var machine = await db.Machines.SingleAsync(m => m.Id == piece.MachineId, cancellation);
        var tool = await db.Tools.SingleAsync(t => t.Id == piece.ToolId, cancellation);
        using var file = new MemoryStream();
        await form.Log!.CopyToAsync(file, cancellation);
        file.Position = 0;
        var read = await TestPieceLog.ReadAsync(
            file,
            Path.GetFileName(form.Log.FileName),
            machine,
            (
                records.Record,
                records.Record.Plan.Pieces.First(p => p.Mark == piece.Mark),
                records.Revision.Content
            ),
            cancellation
        );
        if (read.Log is not { } log)
        {
            return Outcome.From([
                .. read.Problems.Select(p => new Refusal(
                    "log",
                    $"{p.Sentence} {p.Remedy}",
                    nameof(form.Log)
                )),
            ]);
        }

        var outcome = piece.Finish(read.Summary!, form.Remark, tool, actor, moment.At);
        if (outcome.IsAccepted)
        {
            machine.RememberLogColumns(MachineColumns.ToRemember(read.Mapping!), actor, moment.At);
            await db.KeepLogAsync(piece.Id, log, file.ToArray(), cancellation);
        }

        return outcome;
    }

    private static IEnumerable<Refusal> FaultOf(IFormFile? file)
    {
        if (file is null || file.Length == 0)
        {
            yield return new Refusal(
                "log",
                "Choose the CSV file that the machine wrote for this piece.",
                nameof(FinishPieceForm.Log)
            );
        }
        else if (file.Length > MostLogBytes)
        {
            yield return new Refusal(
                "log",
                FormattableString.Invariant(
                    $"The file has {file.Length / 1048576.0:0} MB; at most {MostLogBytes / 1048576} MB are taken. Export this piece alone."
                ),
                nameof(FinishPieceForm.Log)
            );
        }
    }
}
