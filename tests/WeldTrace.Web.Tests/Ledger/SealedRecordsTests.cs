using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using WeldTrace.Persistence.Roles;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Ledger;

/// <summary>With the rights of the application, past all of its code: the database refuses to change what was signed.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class SealedRecordsTests(DemoSite site)
{
    [Theory]
    [InlineData("UPDATE weld_runs SET version = version + 1 WHERE signed_at IS NOT NULL")]
    [InlineData("DELETE FROM weld_runs WHERE signed_at IS NOT NULL")]
    [InlineData("UPDATE leak_tests SET version = version + 1 WHERE signed_at IS NOT NULL")]
    [InlineData("DELETE FROM leak_tests WHERE signed_at IS NOT NULL")]
    [InlineData("UPDATE pressure_tests SET version = version + 1 WHERE signed_at IS NOT NULL")]
    [InlineData("DELETE FROM pressure_tests WHERE signed_at IS NOT NULL")]
    [InlineData("UPDATE sections SET version = version + 1 WHERE signed_at IS NOT NULL")]
    [InlineData("DELETE FROM sections WHERE signed_at IS NOT NULL")]
    [InlineData("UPDATE findings SET version = version + 1 WHERE state = 'Closed'")]
    [InlineData("DELETE FROM findings WHERE state = 'Closed'")]
    [InlineData("UPDATE procedure_revisions SET title = title || 'x' WHERE state <> 'Draft'")]
    [InlineData("DELETE FROM procedure_revisions")]
    [InlineData("UPDATE vessel_designs SET title = title || 'x' WHERE state <> 'Draft'")]
    [InlineData("DELETE FROM vessel_designs")]
    public async Task Change_OfASignedRecord_IsRefusedByTheDatabase(string statement)
    {
        var refusal = await Assert.ThrowsAsync<PostgresException>(() => RunAsync(statement));

        Assert.Equal(PostgresErrorCodes.RestrictViolation, refusal.SqlState);
        Assert.Contains(
            "is never changed or deleted",
            refusal.MessageText,
            StringComparison.Ordinal
        );
    }

    private async Task RunAsync(string statement)
    {
        var cancellation = TestContext.Current.CancellationToken;
        var connections = site.Services.GetRequiredService<IDatabaseConnections>().Current;
        await using var application = new NpgsqlConnection(connections.Application);
        await application.OpenAsync(cancellation);
        // A statement that the database would let pass must not spoil the other tests.
        await using var undone = await application.BeginTransactionAsync(cancellation);
        await using var command = new NpgsqlCommand(statement, application, undone);
        await command.ExecuteNonQueryAsync(cancellation);
    }
}
