namespace WeldTrace.Verify;

/// <summary>Reading must stop at once.</summary>
internal sealed class RefusedBundleException(string path, string message) : Exception(message)
{
    public string Path { get; } = path;
}
