namespace WeldTrace.Web.Security;

/// <summary>At the start, seals and hashes second factors that an earlier version kept as they were.</summary>
internal sealed class SecondFactorsAtStart(IServiceScopeFactory scopes) : IHostedService
{
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        // The database is not there before the services ahead of this one have started.
        await using var scope = scopes.CreateAsyncScope();
        await scope
            .ServiceProvider.GetRequiredService<AccountStore>()
            .UpgradeAsync(cancellationToken);
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
