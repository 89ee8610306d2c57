using WeldTrace.Domain.Welding;

namespace WeldTrace.Web.Features.Welding;

/// <summary>What comes next for a run, and where it is done.</summary>
public static class NextOfRun
{
    public static string Address(WeldRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run switch
        {
            { State: WeldRunState.Running } => Routes.EndRun(run.Id),
            { Log: null } => Routes.BringLog(run.Id),
            { IsSealed: false } => Routes.SignRun(run.Id),
            _ => Routes.Run(run.Id),
        };
    }

    public static string Words(WeldRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run switch
        {
            { State: WeldRunState.Running } => "End the run",
            { Log: null } => "Bring the process log",
            { IsSealed: false } => "Sign the run",
            _ => "See the run",
        };
    }
}
