using System.Globalization;

namespace WeldTrace.Persistence.PrivateServer;

/// <summary>The folder with <c>initdb</c> and <c>postgres</c>, of the version that the cluster was made with.</summary>
internal sealed record ServerPrograms(string Folder)
{
    private const string DebianFolder = "/usr/lib/postgresql";

    public string InitDb => Path.Combine(Folder, "initdb");

    public string Postgres => Path.Combine(Folder, "postgres");

    /// <exception cref="DatabaseStartException">There are no programs, or none of the cluster's version.</exception>
    public static async Task<ServerPrograms> FindAsync(
        string? binFolder,
        string clusterFolder,
        CancellationToken cancellation
    )
    {
        var isNamed = !string.IsNullOrWhiteSpace(binFolder);
        ServerPrograms[] places = isNamed
            ? [new ServerPrograms(Path.GetFullPath(binFolder!))]
            : [.. Installed(), .. SearchPath()];
        var needed = ClusterVersion(clusterFolder);
        foreach (var place in places.Where(place => place.AreComplete))
        {
            if (needed is null || await place.IsOfVersionAsync(needed, cancellation))
            {
                return place;
            }
        }

        throw Missing(isNamed ? places[0].Folder : DebianFolder, needed);
    }

    private bool AreComplete => File.Exists(InitDb) && File.Exists(Postgres);

    private async Task<bool> IsOfVersionAsync(string version, CancellationToken cancellation)
    {
        var answer = await Command.RunAsync([Postgres, "--version"], cancellation);
        var words = answer.Output.Split(' ', StringSplitOptions.TrimEntries);
        return words.Any(word =>
            word == version || word.StartsWith(version + ".", StringComparison.Ordinal)
        );
    }

    private static string? ClusterVersion(string clusterFolder)
    {
        var file = Path.Combine(clusterFolder, "PG_VERSION");
        return File.Exists(file) ? File.ReadAllText(file).Trim() : null;
    }

    private static IEnumerable<ServerPrograms> Installed() =>
        Directory.Exists(DebianFolder)
            ? Directory
                .EnumerateDirectories(DebianFolder)
                .OrderByDescending(VersionOf)
                .Select(folder => new ServerPrograms(Path.Combine(folder, "bin")))
            : [];

    private static double VersionOf(string folder) =>
        double.TryParse(
            Path.GetFileName(folder),
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out var version
        )
            ? version
            : 0;

    private static IEnumerable<ServerPrograms> SearchPath() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(':', StringSplitOptions.RemoveEmptyEntries)
            .Select(folder => new ServerPrograms(folder));

    private static DatabaseStartException Missing(string place, string? version) =>
        version is null
            ? new DatabaseStartException(
                DatabaseStartProblem.NoServerPrograms,
                "PostgreSQL's programs initdb and postgres were not found",
                place,
                "Install them with: apt-get install postgresql. Or name their folder in Database:BinFolder, or give a server in ConnectionStrings:WeldTrace."
            )
            : new DatabaseStartException(
                DatabaseStartProblem.NewerVersion,
                $"The data folder was made by PostgreSQL {version}, and that version is not installed",
                place,
                $"Install it with: apt-get install postgresql-{version}. Or name the folder of its programs in Database:BinFolder."
            );
}
