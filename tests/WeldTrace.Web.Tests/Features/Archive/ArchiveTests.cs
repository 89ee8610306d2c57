using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.Persistence.Roles;
using WeldTrace.ProcessLogs;
using WeldTrace.TestSupport.Records;
using WeldTrace.Verify;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Tests.Access;
using WeldTrace.Web.Tests.Ledger;

namespace WeldTrace.Web.Tests.Features.Archive;

/// <summary>A vessel of the demonstration, archived eleven years later: all of it is still there, and nobody can take it away unseen.</summary>
[Collection(typeof(SecondDemoSiteGroup))]
public sealed class ArchiveTests(DemoSite site)
{
    private const string Other = "NR10-0022";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Archived_LeavesTheDatabase_AndIsReadFromTheBundle()
    {
        var archive = await ArchiveAsync();
        Assert.NotEmpty(archive.Files);
        Assert.NotEmpty(archive.Logs);
        Assert.All(
            await site.ReadAsync(db =>
                db.Attachments.Where(a => archive.Files.Contains(a.Sha256)).ToListAsync()
            ),
            a => Assert.Equal((0, (Guid?)archive.Id), (a.Bytes.Length, a.ArchiveId))
        );

        var visit = await site.VisitAsync(DemoPeople.Auditor);
        foreach (var file in archive.Files)
        {
            Assert.Equal(file, await HashAsync(visit, $"/attachments/{file}"));
        }

        foreach (var log in archive.Logs)
        {
            Assert.False(
                await site.ReadAsync(db => db.ProcessLogChunks.AnyAsync(c => c.RunId == log.RunId))
            );
            Assert.Equal(log.Hash, await HashAsync(visit, Routes.RunLogCsv(log.RunId)));
        }

        Assert.Equal(
            archive.Bundle.Hash,
            await HashAsync(visit, Routes.ArchivedBundle(archive.Id))
        );
    }

    [Fact]
    public async Task ArchivedLog_IsDrawnAsBefore()
    {
        var archive = await ArchiveAsync();
        var run = archive.Logs[0].RunId;

        var (whole, part) = await site.ReadAsync(async db =>
            (
                await db.FindProcessLogAsync(run, Cancellation),
                await db.FindLogWindowAsync(
                    run,
                    header => header.Columns.Select(c => c.Ordinal),
                    5,
                    6,
                    10_000,
                    Cancellation
                )
            )
        );

        var levels = await site.ReadAsync(db => db.LoadLogLevelsAsync(run, Cancellation));
        Assert.Equal(
            levels.Select(l => Convert.ToHexString(l.Bytes.Span)),
            whole!
                .Pyramid.OrderBy(l => l.Ordinal)
                .ThenBy(l => l.SamplesPerBucket)
                .Select(l => Convert.ToHexString(l.Bytes.Span))
        );
        Assert.All(
            whole.Header.Columns,
            column =>
                Assert.Equal(
                    LogChart.Envelope(whole, column, 5, 6, 10_000),
                    LogChart.Envelope(part!, column, 5, 6, 10_000)
                )
        );
    }

    [Fact]
    public async Task FreshBundle_OfAnArchivedVessel_IsWhole()
    {
        var archive = await ArchiveAsync();
        var visit = await site.VisitAsync(DemoPeople.Auditor);

        var bytes = await BytesAsync(visit, Routes.Bundle(archive.VesselSerial));

        var report = BundleVerifier.Verify(new MemoryStream(bytes));
        Assert.True(report.IsVerified, string.Join('\n', report.Problems));
        Assert.Empty(
            new ArchiveContents(archive.Files, archive.Logs).MissingFrom(report.Manifest!)
        );
        Assert.Contains(
            report.Manifest!.Files,
            f => f.Path == $"records/vessel-archive/{archive.Id:D}.json"
        );
    }

    [Theory]
    [InlineData(
        "UPDATE attachments SET archive_id = NULL WHERE archive_id IS NOT NULL",
        "was changed: its bytes"
    )]
    [InlineData(
        "UPDATE attachments SET archive_id = gen_random_uuid() WHERE archive_id IS NOT NULL",
        "was changed: its bytes"
    )]
    [InlineData(
        "UPDATE attachments SET bytes = 'x' WHERE archive_id IS NOT NULL",
        "was changed: its bytes"
    )]
    [InlineData(
        "UPDATE process_logs SET archive_id = NULL WHERE archive_id IS NOT NULL",
        "process log of"
    )]
    [InlineData(
        "UPDATE process_logs SET archive_id = gen_random_uuid() WHERE archive_id IS NOT NULL",
        "process log of"
    )]
    [InlineData("DELETE FROM process_logs WHERE archive_id IS NOT NULL", "is missing")]
    public async Task ArchivedRowForged_IsFound(string statement, string said)
    {
        await using var forger = await Forger.OpenAsync(site);
        await forger.KeepAsync("attachments");
        await forger.KeepAsync("process_logs");
        Assert.NotEqual(0, await forger.RunAsync(statement));

        Assert.Contains(await ProblemsAsync(), p => p.Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public async Task BundleForgedOrTakenAway_IsFound_AndTellsWhatToDo()
    {
        var archive = await ArchiveAsync();
        var path = site.Services.GetRequiredService<ArchiveFolder>().Find(archive.Id)!;
        await path.DisposeAsync();
        var bytes = await File.ReadAllBytesAsync(path.Name, Cancellation);
        try
        {
            var forged = bytes.ToArray();
            forged[forged.Length / 2] ^= 1;
            await File.WriteAllBytesAsync(path.Name, forged, Cancellation);
            Assert.Contains(
                "no longer gives its hash",
                Assert.Single(await ProblemsAsync()),
                StringComparison.Ordinal
            );

            File.Delete(path.Name);
            Assert.Contains(
                "is missing from the folder of archives",
                Assert.Single(await ProblemsAsync()),
                StringComparison.Ordinal
            );
            var missing = await Assert.ThrowsAsync<FileNotFoundException>(() =>
                site.ReadAsync(db => db.FindAttachmentAsync(archive.Files[0], Cancellation))
            );
            Assert.Contains(Path.GetFileName(path.Name), missing.Message, StringComparison.Ordinal);
        }
        finally
        {
            await File.WriteAllBytesAsync(path.Name, bytes, Cancellation);
        }

        Assert.Empty(await ProblemsAsync());
    }

    [Fact]
    public async Task Archiving_TooEarly_ByOthers_OrWithoutTheBundleShown_ChangesNothing()
    {
        var before = await site.LedgerSizeAsync();
        var quality = await ArchivedVessel.ActorAsync(site, DemoPeople.QualityManager);
        var engineer = await ArchivedVessel.ActorAsync(site, DemoPeople.Engineer);

        await ArchivedVessel.AtAsync(
            site,
            ArchivedVessel.Now(site),
            async (handler, _) =>
                Assert.Equal(
                    "retention",
                    Code(await handler.WriteBundleAsync(Other, site.Address, quality, Cancellation))
                )
        );
        await ArchivedVessel.AtAsync(
            site,
            ArchivedVessel.Later(site),
            async (handler, drafts) =>
            {
                Assert.Equal(
                    "role",
                    Code(
                        await handler.WriteBundleAsync(Other, site.Address, engineer, Cancellation)
                    )
                );
                var none = await ArchivedVessel.FormAsync(site, drafts, Other);
                Assert.Equal(
                    "bundle",
                    Code(await handler.ArchiveAsync(Other, none, quality, Cancellation))
                );

                Accept.All(
                    await handler.WriteBundleAsync(Other, site.Address, quality, Cancellation)
                );
                var form = await ArchivedVessel.FormAsync(site, drafts, Other);
                Assert.Contains(
                    "role",
                    (
                        await handler.ArchiveAsync(Other, form, engineer, Cancellation)
                    ).Refusals.Select(r => r.Code)
                );
                form.Hash = new string('0', 64);
                Assert.Equal(
                    "bundle",
                    Code(await handler.ArchiveAsync(Other, form, quality, Cancellation))
                );
                form.Password = "wrong";
                Assert.Equal(
                    "password",
                    Code(await handler.ArchiveAsync(Other, form, quality, Cancellation))
                );
            }
        );

        Assert.Equal(before, await site.LedgerSizeAsync());
        Assert.Empty(await ProblemsAsync());
    }

    /// <summary>What would be lost by it stays out of reach: the application's own role can neither change nor empty what is kept.</summary>
    [Theory]
    [InlineData("UPDATE attachments SET bytes = ''")]
    [InlineData("DELETE FROM process_log_chunks")]
    [InlineData("UPDATE process_logs SET archive_id = gen_random_uuid()")]
    [InlineData("DELETE FROM vessel_archives")]
    public async Task ApplicationRole_CannotDetach(string statement)
    {
        var connections = site.Services.GetRequiredService<IDatabaseConnections>().Current;
        await using var application = new NpgsqlConnection(connections.Application);
        await application.OpenAsync(Cancellation);
        await using var undone = await application.BeginTransactionAsync(Cancellation);
        await using var command = new NpgsqlCommand(statement, application, undone);

        var refusal = await Assert.ThrowsAsync<PostgresException>(() =>
            command.ExecuteNonQueryAsync(Cancellation)
        );

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refusal.SqlState);
    }

    private static string Code(Outcome outcome) => Assert.Single(outcome.Refusals).Code;

    private Task<VesselArchive> ArchiveAsync() =>
        site.ReadAsync(db =>
            db.VesselArchives.SingleAsync(a => a.VesselSerial == ArchivedVessel.Serial)
        );

    private async Task<IReadOnlyList<string>> ProblemsAsync() =>
        (await site.ReadAsync(db => db.CheckLedgerAsync(Cancellation))).Problems;

    private static async Task<string> HashAsync(SiteVisit visit, string path) =>
        Convert.ToHexStringLower(SHA256.HashData(await BytesAsync(visit, path)));

    private static async Task<byte[]> BytesAsync(SiteVisit visit, string path)
    {
        var answer = await visit.GetAsync(path);
        Assert.Equal(System.Net.HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsByteArrayAsync(Cancellation);
    }
}
