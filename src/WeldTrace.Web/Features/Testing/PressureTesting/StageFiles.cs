using SkiaSharp;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Features.Testing.Logs;
using WeldTrace.Web.Files;

namespace WeldTrace.Web.Features.Testing.PressureTesting;

/// <summary>The readings of a stage with the files they came with.</summary>
public sealed record ReadStage(StageReading Reading, IReadOnlyList<Attachment> Files);

/// <summary>Reads a stage from what was typed, or from the logger file in its place.</summary>
internal static class StageFiles
{
    public static async Task<Outcome<ReadStage>> ReadAsync(
        PressureStageForm form,
        PressureStage stage,
        PressurePlan plan,
        PressureSetUp setUp,
        CancellationToken cancellation
    )
    {
        BroughtLog? log = null;
        if (form.Log is { Length: > 0 } file && stage.Kind != PressureStageKind.ReturnToZero)
        {
            var brought = await BenchLogReader.ReadAsync(file, nameof(form.Log), cancellation);
            if (!brought.IsAccepted)
            {
                return brought.Refusals.ToList();
            }

            log = brought.Value;
        }

        return stage.Kind switch
        {
            PressureStageKind.Burst => await BurstAsync(form, log, cancellation),
            PressureStageKind.ReturnToZero => Typed(entries => form.ReadReturn(setUp, entries)),
            _ when log is not null => Logged(form, log, stage, plan),
            _ => Typed(entries => form.ReadHold(stage, entries)),
        };
    }

    private static Outcome<ReadStage> Typed(Func<Entries, StageReading> read)
    {
        var entries = new Entries();
        var reading = read(entries);
        return entries.Refusals.Count > 0 ? entries.Refusals.ToList() : new ReadStage(reading, []);
    }

    private static Outcome<ReadStage> Logged(
        PressureStageForm form,
        BroughtLog log,
        PressureStage stage,
        PressurePlan plan
    )
    {
        var hold = LoggedReadings.Hold(log, stage, plan, nameof(form.Log));
        return hold.IsAccepted
            ? new ReadStage(hold.Value, [log.Attachment])
            : hold.Refusals.ToList();
    }

    private static async Task<Outcome<ReadStage>> BurstAsync(
        PressureStageForm form,
        BroughtLog? log,
        CancellationToken cancellation
    )
    {
        var entries = new Entries();
        List<Refusal> refusals = [];
        List<Attachment> files = [];
        List<Photograph> photographs = [];
        foreach (
            var (file, field) in new[]
            {
                (form.Photograph, nameof(form.Photograph)),
                (form.SecondPhotograph, nameof(form.SecondPhotograph)),
            }
        )
        {
            var kept = await PaperReader.ReadOptionalAsync(file, field, refusals, cancellation);
            if (
                kept is not null
                && PhotographOf(kept, file!.FileName, field, refusals) is { } photograph
            )
            {
                files.Add(kept);
                photographs.Add(photograph);
            }
        }

        var burst = form.ReadBurst(
            log is null ? null : LoggedReadings.Burst(log),
            photographs,
            entries
        );
        refusals.AddRange(entries.Refusals);
        if (refusals.Count > 0)
        {
            return refusals;
        }

        return new ReadStage(
            new StageReading(null, null, null, null, 0, null) { Burst = burst, Log = log?.File },
            log is null ? files : [.. files, log.Attachment]
        );
    }

    private static Photograph? PhotographOf(
        Attachment kept,
        string fileName,
        string field,
        List<Refusal> refusals
    )
    {
        using var data = SKData.CreateCopy(kept.Bytes);
        using var codec = SKCodec.Create(data);
        if (codec is null)
        {
            refusals.Add(
                new Refusal(
                    "photograph",
                    "The file is no photograph that can be shown. Save it as JPEG or PNG, then choose it again.",
                    field
                )
            );
            return null;
        }

        return new Photograph(
            kept.Sha256,
            Path.GetFileName(fileName),
            kept.MediaType,
            codec.Info.Width,
            codec.Info.Height
        );
    }
}
