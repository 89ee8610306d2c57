using Microsoft.Extensions.Logging.Abstractions;
using WeldTrace.Persistence.PrivateServer;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

internal static class Refusals
{
    public static async Task<DatabaseStartException> OfAsync(PrivateServerSettings settings)
    {
        await using var server = new PrivatePostgresServer(
            settings,
            NullLogger<PrivatePostgresServer>.Instance
        );
        return await Assert.ThrowsAsync<DatabaseStartException>(() =>
            server.StartAsync(CancellationToken.None)
        );
    }

    public static Task<DatabaseStartException> OfAsync(string folder) =>
        OfAsync(new PrivateServerSettings(folder));

    public static void WriteProgram(string folder, string name, string body)
    {
        Directory.CreateDirectory(folder);
        var file = Path.Combine(folder, name);
        File.WriteAllText(file, $"#!/bin/sh\n{body}\n");
        PreparedFolder.Run("chmod", "755", folder, file);
    }
}
