namespace WeldTrace.Verify;

/// <summary>One thing that is wrong, and in which file of the bundle.</summary>
public sealed record BundleProblem(ProblemKind Kind, string Path, string Message);
