using Microsoft.Extensions.Logging.Abstractions;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;

// A process of its own for tests that kill the application. It says "ready" and the server's process id, and then runs
// until its input ends.
await using var server = new PrivatePostgresServer(
    new PrivateServerSettings(args[0]),
    NullLogger<PrivatePostgresServer>.Instance
);
try
{
    await server.StartAsync(CancellationToken.None);
    var connections = await PrivateDatabase.EnsureAsync(server, CancellationToken.None);
    Console.WriteLine($"ready {server.ProcessId} {connections.Owner}");
    await Console.In.ReadLineAsync();
    return 0;
}
catch (DatabaseStartException refusal)
{
    Console.WriteLine($"refused {refusal.Message}");
    return 1;
}
