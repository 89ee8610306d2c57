using System.Net;
using System.Net.Sockets;
using System.Text;
using Npgsql;

namespace WeldTrace.Persistence.PrivateServer;

/// <summary>Where the server listens: a socket in the cluster folder, or loopback where its path would be too long.</summary>
internal sealed record ServerAddress(string Host, int Port)
{
    private const int LongestSocketPath = 107;
    private const int SocketPort = 5432;

    public static string SocketName => FormattableString.Invariant($".s.PGSQL.{SocketPort}");

    private bool IsSocket => Host.StartsWith('/');

    public IReadOnlyList<string> Options =>
        IsSocket
            ?
            [
                "-c",
                "listen_addresses=",
                "-c",
                $"unix_socket_directories={Quote(Host)}",
                "-c",
                $"port={Port}",
            ]
            :
            [
                "-c",
                $"listen_addresses={Host}",
                "-c",
                "unix_socket_directories=",
                "-c",
                $"port={Port}",
            ];

    public static ServerAddress Choose(string clusterFolder, bool usesLoopback)
    {
        var socket = Path.Combine(clusterFolder, SocketName);
        // Npgsql reads a comma as the start of a second host.
        var fits =
            Encoding.UTF8.GetByteCount(socket) <= LongestSocketPath
            && !socket.Contains(',', StringComparison.Ordinal);
        return fits && !usesLoopback ? new ServerAddress(clusterFolder, SocketPort) : OnLoopback();
    }

    /// <summary>Another free port after a failed try; a socket's address stays as it is.</summary>
    public ServerAddress Another() => IsSocket ? this : OnLoopback();

    public NpgsqlConnectionStringBuilder ConnectionTo(string database) =>
        new()
        {
            Host = Host,
            Port = Port,
            Database = database,
            SslMode = SslMode.Disable,
            GssEncryptionMode = GssEncryptionMode.Disable,
        };

    private static ServerAddress OnLoopback()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return new ServerAddress("127.0.0.1", ((IPEndPoint)listener.LocalEndpoint).Port);
    }

    private static string Quote(string folder) =>
        $"\"{folder.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
