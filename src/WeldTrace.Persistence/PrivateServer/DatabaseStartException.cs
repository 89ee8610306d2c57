namespace WeldTrace.Persistence.PrivateServer;

/// <summary>The database could not be made ready. The message says what is wrong, where, and how to mend it.</summary>
public sealed class DatabaseStartException : Exception
{
    public DatabaseStartException(
        DatabaseStartProblem problem,
        string what,
        string where,
        string remedy,
        Exception? cause = null
    )
        : base($"{what} ({where}). {remedy}", cause)
    {
        Problem = problem;
        What = what;
        Where = where;
        Remedy = remedy;
    }

    public DatabaseStartProblem Problem { get; }

    public string What { get; }

    public string Where { get; }

    public string Remedy { get; }

    public static DatabaseStartException NoSpaceLeft(string folder, Exception? cause = null) =>
        new(
            DatabaseStartProblem.NoSpaceLeft,
            "There is no space left on the disk of the data folder",
            folder,
            "Free some space on that disk, or move the data folder to a larger one and name it in Database:Folder.",
            cause
        );
}
