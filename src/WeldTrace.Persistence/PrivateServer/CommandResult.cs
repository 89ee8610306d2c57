namespace WeldTrace.Persistence.PrivateServer;

internal sealed record CommandResult(int ExitCode, string Output, string Errors)
{
    public bool IsSuccess => ExitCode == 0;
}
