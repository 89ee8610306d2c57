namespace WeldTrace.Documents.Tests.Samples;

/// <summary>Keeps a written sample for the eye, in the folder that WELDTRACE_SAMPLE_FOLDER names.</summary>
internal static class SampleFolder
{
    public static void Keep(string name, byte[] bytes)
    {
        if (Environment.GetEnvironmentVariable("WELDTRACE_SAMPLE_FOLDER") is { Length: > 0 } folder)
        {
            File.WriteAllBytes(Path.Combine(folder, name), bytes);
        }
    }
}
