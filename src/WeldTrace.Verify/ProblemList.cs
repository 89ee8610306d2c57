namespace WeldTrace.Verify;

/// <summary>Collects problems; one of each kind for each file.</summary>
internal sealed class ProblemList
{
    private readonly List<BundleProblem> _problems = [];
    private readonly HashSet<(ProblemKind, string)> _known = [];

    public IReadOnlyList<BundleProblem> All => _problems;

    public List<string> Notes { get; } = [];

    public void Add(ProblemKind kind, string path, string message)
    {
        if (_known.Add((kind, path)))
        {
            _problems.Add(new BundleProblem(kind, path, message));
        }
    }

    public bool IsDamaged(string path) =>
        _known.Contains((ProblemKind.Changed, path))
        || _known.Contains((ProblemKind.Removed, path))
        || _known.Contains((ProblemKind.Unreadable, path));

    public bool Any(Func<BundleProblem, bool> condition) => _problems.Any(condition);
}
