using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Domain.Ledger;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Features.LedgerView.Checkpoints;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Ledger;

/// <summary>What was signed once stays a true statement, and whoever rewrites the ledger whole is found by it.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class CheckpointTests(DemoSite site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>The signature is checked by OpenSSL, which knows nothing of this program.</summary>
    [Fact]
    public async Task Files_OfACheckpoint_VerifyWithOpenSsl()
    {
        var folder = Directory.CreateTempSubdirectory("checkpoint-").FullName;
        var visit = await site.VisitAsync(DemoPeople.Auditor);
        var size = (await TakeAsync()).TreeSize;
        foreach (
            var file in new[]
            {
                CheckpointFiles.Statement,
                CheckpointFiles.Signature,
                CheckpointFiles.Key,
            }
        )
        {
            var answer = await visit.GetAsync(Routes.CheckpointFile(size, file));
            var bytes = await answer.Content.ReadAsByteArrayAsync(Cancellation);
            await File.WriteAllBytesAsync(Path.Combine(folder, file), bytes, Cancellation);
            // The witness's copy is the same.
            var published = Path.Combine(
                site.Folder,
                "checkpoints",
                CheckpointFiles.Name(size, file)
            );
            Assert.Equal(bytes, await File.ReadAllBytesAsync(published, Cancellation));
        }

        using var openSsl = Process.Start(
            new ProcessStartInfo("openssl", "dgst -sha256 -verify pem -signature sig json")
            {
                WorkingDirectory = folder,
            }
        )!;
        await openSsl.WaitForExitAsync(Cancellation);
        Directory.Delete(folder, recursive: true);
        Assert.Equal(0, openSsl.ExitCode);
    }

    [Fact]
    public async Task Take_WithoutChange_GivesTheSameCheckpointAgain()
    {
        var first = await TakeAsync();
        var second = await TakeAsync();

        Assert.Equal(first.Statement, second.Statement);
        Assert.Equal(first.Signature, second.Signature);
    }

    [Theory]
    [InlineData(
        "UPDATE checkpoints SET statement = replace(statement, 'Halvorsen', 'Halvorson')",
        "its signature no longer holds"
    )]
    [InlineData(
        "UPDATE checkpoints SET signature = set_byte(signature, 12, 255 - get_byte(signature, 12))",
        "its signature no longer holds"
    )]
    [InlineData(
        "UPDATE checkpoints SET at = at - interval '1 day'",
        "its signature no longer holds"
    )]
    [InlineData("UPDATE checkpoints SET tree_size = 3", "its signature no longer holds")]
    [InlineData("DELETE FROM signing_keys", "a key that is not on record")]
    public async Task CheckpointForged_IsFound(string statement, string said)
    {
        await TakeAsync();
        await using var forger = await Forger.OpenAsync(site);
        await forger.KeepAsync("checkpoints");
        await forger.KeepAsync("signing_keys");
        var one = statement.StartsWith("UPDATE", StringComparison.Ordinal)
            ? " WHERE tree_size = (SELECT max(tree_size) FROM checkpoints)"
            : "";

        Assert.NotEqual(0, await forger.RunAsync(statement + one));

        Assert.Contains(await ProblemsAsync(), p => p.Contains(said, StringComparison.Ordinal));
    }

    /// <summary>Entry, leaf, nodes and head rewritten so that they agree: only the checkpoint still tells.</summary>
    [Fact]
    public async Task LedgerRewrittenWhole_IsFoundByAnEarlierCheckpoint_AndNothingIsSignedAnyMore()
    {
        var size = (await TakeAsync()).TreeSize;
        await using var forger = await Forger.OpenAsync(site);
        foreach (var table in new[] { "ledger_entries", "ledger_nodes", "ledger_head" })
        {
            await forger.KeepAsync(table);
        }

        await RewriteAsync(forger);

        var problem = Assert.Single(await ProblemsAsync(), p => p.Contains("checkpoint of"));
        Assert.Equal(
            $"The checkpoint of {size} entries was signed for other entries than those that are there.",
            problem
        );
        var refusal = await Assert.ThrowsAsync<BrokenLedgerException>(TakeAsync);
        Assert.Equal(size, refusal.TreeSize);
    }

    [Fact]
    public async Task LedgerCutOff_IsFoundByALaterCheckpoint()
    {
        var size = (await TakeAsync()).TreeSize;
        await using var forger = await Forger.OpenAsync(site);
        foreach (var table in new[] { "ledger_entries", "ledger_nodes", "ledger_head" })
        {
            await forger.KeepAsync(table);
        }

        await forger.RunAsync(
            $"DELETE FROM ledger_entries WHERE number = {size - 1}; DELETE FROM ledger_nodes"
        );
        await WriteTreeAsync(forger);

        Assert.Contains(
            await ProblemsAsync(),
            p => p.Contains("the end of the ledger was cut off", StringComparison.Ordinal)
        );
        Assert.Equal(size, (await Assert.ThrowsAsync<BrokenLedgerException>(TakeAsync)).TreeSize);
    }

    private async Task RewriteAsync(Forger forger)
    {
        const string Wanted = "WHERE number = (SELECT max(number) FROM ledger_entries)";
        await forger.RunAsync(
            $"""
            UPDATE ledger_entries SET entry = regexp_replace(entry, '"actorName":"[^"]*"', '"actorName":"Somebody Else"') {Wanted};
            UPDATE ledger_entries SET leaf_hash = sha256('\x00'::bytea || convert_to(entry, 'UTF8')) {Wanted};
            DELETE FROM ledger_nodes;
            """
        );
        await WriteTreeAsync(forger);
    }

    // What a forger who knows the program does last: nodes and head that follow from the forged entries.
    private async Task WriteTreeAsync(Forger forger)
    {
        var entries = await site.ReadAsync(db =>
            db.LedgerEntries.OrderBy(e => e.Number).Select(e => e.Entry).ToListAsync()
        );
        var tree = MerkleFrontier.Empty;
        StringBuilder statements = new();
        foreach (var entry in entries)
        {
            (tree, var nodes) = tree.Append(MerkleTree.LeafHash(Encoding.UTF8.GetBytes(entry)));
            foreach (var node in nodes)
            {
                statements.Append(
                    CultureInfo.InvariantCulture,
                    $"INSERT INTO ledger_nodes VALUES ({node.Level}, {node.Index}, '\\x{Convert.ToHexString(node.Hash)}');"
                );
            }
        }

        statements.Append(
            CultureInfo.InvariantCulture,
            $"UPDATE ledger_head SET frontier = '\\x{Convert.ToHexString(tree.ToBytes())}'"
        );
        await forger.RunAsync(statements.ToString());
    }

    private async Task<CheckpointRow> TakeAsync() =>
        (await site.Services.GetRequiredService<CheckpointDesk>().TakeAsync(Cancellation))!;

    private async Task<IReadOnlyList<string>> ProblemsAsync() =>
        (await site.ReadAsync(db => db.CheckLedgerAsync(Cancellation))).Problems;
}
