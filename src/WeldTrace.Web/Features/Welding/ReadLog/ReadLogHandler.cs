using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Files;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Features.Welding.ReadLog;

/// <summary>Reads a brought file, judges it and keeps it with its run: all of it in one transaction, or nothing.</summary>
public sealed class ReadLogHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    StagedLogs staged,
    ArrivedLogs arrivals,
    LogIntake intake,
    SignalWatch signals,
    TimeProvider clock
)
{
    private const long Megabyte = 1024 * 1024;

    private static readonly Refusal OriginalTooLarge = new(
        "original",
        "The samples of this file don't give it back byte for byte, and packed it has more than 512 MB, which is too large to be kept beside them. Export one run per file, with every column mapped."
    );

    /// <summary>Most bytes of a file that is kept as it was brought; a larger one is packed.</summary>
    public long MostPlainBytes { get; init; } = 256 * Megabyte;

    /// <summary>Most bytes of a packed file that is kept.</summary>
    public long MostPackedBytes { get; init; } = 512 * Megabyte;

    /// <summary>The run with the brought file; null when there is no such run.</summary>
    public async Task<ReadLogView?> FindAsync(
        Guid runId,
        Guid upload,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var run = await db
            .WeldRuns.AsNoTracking()
            .SingleOrDefaultAsync(r => r.Id == runId, cancellation);
        if (run is null)
        {
            return null;
        }

        var machine = await db
            .Machines.AsNoTracking()
            .SingleAsync(m => m.Id == run.MachineId, cancellation);
        var file = await staged.FindAsync(runId, upload, cancellation);
        var looked = file is null
            ? new LogPreviewResult(null, [])
            : await PreviewAsync(runId, file, cancellation);
        var remembered = machine.Remembered();
        return new ReadLogView
        {
            Run = run,
            Machine = machine,
            Staged = file,
            Preview = looked.Preview,
            Remembered = remembered,
            Problems =
            [
                .. looked.Problems,
                .. looked.Preview is { } preview
                    ? remembered?.CompareWith(preview.Columns) ?? []
                    : [],
            ],
        };
    }

    public async Task<ReadLogResult> HandleAsync(
        Guid runId,
        Guid upload,
        ReadLogForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        using var turn = await intake.TakeTurnAsync(cancellation);
        return turn.IsAcquired
            ? await TakeAsync(runId, upload, form, actor, cancellation)
            : Refused(LogIntake.Full);
    }

    private async Task<ReadLogResult> TakeAsync(
        Guid runId,
        Guid upload,
        ReadLogForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindRunAsync(runId, cancellation) is not { } records)
        {
            return Refused(new Refusal("run", "There is no such run."));
        }

        if (records.Run.AwaitsLog(actor) is { IsAccepted: false } refused)
        {
            return new ReadLogResult(refused, []);
        }

        if (await staged.FindAsync(runId, upload, cancellation) is not { } file)
        {
            return Refused(StagedLogs.Gone);
        }

        var machine = await db.Machines.SingleAsync(
            m => m.Id == records.Run.MachineId,
            cancellation
        );
        var (log, mapping, problems) = await ReadAsync(runId, file, machine, form, cancellation);
        if (log is null)
        {
            return new ReadLogResult(Outcome.Accepted, problems);
        }

        var (findings, judged) = Judge(records, file, log, mapping, actor);
        if (!findings.IsAccepted)
        {
            return new ReadLogResult(findings.WithoutValue(), judged);
        }

        machine.RememberLogColumns(MachineColumns.ToRemember(mapping), actor, clock.GetUtcNow());
        db.AddRange(findings.Value);
        await db.KeepRunFiguresAsync(records.Run, records.Tool, cancellation);
        if (!await KeepAsync(db, runId, file, log, cancellation))
        {
            return Refused(OriginalTooLarge);
        }

        var saved = await db.SaveAsync(cancellation);
        if (saved.IsAccepted)
        {
            signals.Judged(records.Run.ProcedureRevisionId);
            staged.Remove(runId, file);
            arrivals.RemoveTaken(machine.Id, log.Header.OriginalSha256);
        }

        return new ReadLogResult(saved, []);
    }

    private (Outcome<IReadOnlyList<Finding>> Findings, IReadOnlyList<LogProblem> Problems) Judge(
        RunRecords records,
        StagedLog file,
        ProcessLog log,
        LogMapping mapping,
        Actor actor
    )
    {
        var (run, content) = (records.Run, records.Revision.Content);
        var plan = RunPlan.For(run, records.Pass, content) with { Filters = mapping.Filters };
        var evaluation = LogEvaluation.Evaluate(log, plan);
        var findings = run.TakeLog(
            RunSummary.Of(file.FileName, log, evaluation, run, content),
            content.Windows,
            records.Vessel,
            records.Tool,
            actor,
            clock.GetUtcNow()
        );
        return (findings, evaluation.Problems);
    }

    private async Task<LogPreviewResult> PreviewAsync(
        Guid runId,
        StagedLog file,
        CancellationToken cancellation
    )
    {
        await using var stream = staged.Open(runId, file);
        return await LogPreview.ReadAsync(stream, null, cancellation);
    }

    private async Task<(ProcessLog?, LogMapping, IReadOnlyList<LogProblem>)> ReadAsync(
        Guid runId,
        StagedLog file,
        Machine machine,
        ReadLogForm form,
        CancellationToken cancellation
    )
    {
        var looked = await PreviewAsync(runId, file, cancellation);
        if (looked.Preview is not { } preview)
        {
            return (null, new LogMapping([]), looked.Problems);
        }

        var mapping =
            form.IsNewMapping || machine.Remembered() is not { } remembered
                ? PostedMapping.Of(preview, form)
                : remembered;
        await using var stream = staged.Open(runId, file);
        var read = await ProcessLogReader.ReadAsync(stream, mapping, null, cancellation);
        return (read.Log, mapping, read.Problems);
    }

    private async Task<bool> KeepAsync(
        WeldTraceDbContext db,
        Guid runId,
        StagedLog file,
        ProcessLog log,
        CancellationToken cancellation
    )
    {
        if (log.Header.CsvIsOriginal)
        {
            db.AddProcessLog(runId, log, null);
            return true;
        }

        var original =
            log.Header.OriginalLengthBytes > MostPlainBytes
                ? await PackAsync(runId, file, cancellation)
                : await OriginalAsync(runId, file, log.Header, cancellation);
        if (original is null)
        {
            return false;
        }

        await db.KeepAsync(original, cancellation);
        db.AddProcessLog(runId, log, original.Sha256);
        return true;
    }

    // In a file and not in memory, for as long as it isn't known to be small enough.
    private async Task<Attachment?> PackAsync(
        Guid runId,
        StagedLog file,
        CancellationToken cancellation
    )
    {
        await using var packed = new FileStream(
            Path.Combine(Path.GetTempPath(), Path.GetRandomFileName()),
            new FileStreamOptions
            {
                Mode = FileMode.CreateNew,
                Access = FileAccess.ReadWrite,
                Options = FileOptions.DeleteOnClose | FileOptions.Asynchronous,
                UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
            }
        );
        await using var stream = staged.Open(runId, file);
        if (!await PackedOriginal.PackAsync(stream, packed, MostPackedBytes, cancellation))
        {
            return null;
        }

        var bytes = new byte[packed.Length];
        packed.Position = 0;
        await packed.ReadExactlyAsync(bytes, cancellation);
        return new Attachment
        {
            Sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes)),
            MediaType = "application/zstd",
            Length = bytes.Length,
            Bytes = bytes,
        };
    }

    private async Task<Attachment> OriginalAsync(
        Guid runId,
        StagedLog file,
        LogHeader header,
        CancellationToken cancellation
    )
    {
        var bytes = new byte[header.OriginalLengthBytes];
        await using var stream = staged.Open(runId, file);
        await stream.ReadExactlyAsync(bytes, cancellation);
        return new Attachment
        {
            Sha256 = header.OriginalSha256,
            MediaType = LogKeeping.MediaTypeOf(header),
            Length = bytes.Length,
            Bytes = bytes,
        };
    }

    private static ReadLogResult Refused(Refusal refusal) => new(Outcome.From([refusal]), []);
}
