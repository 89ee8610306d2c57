using Microsoft.Extensions.Logging.Console;

namespace WeldTrace.Web.Security;

public static class LogTimes
{
    private const string Instant = "yyyy-MM-dd'T'HH:mm:ss.fff'Z' ";

    /// <summary>Each line of the log says when, in UTC, unless the settings name another format. What systemd keeps has its time from there.</summary>
    public static IServiceCollection AddLogTimes(this IServiceCollection services) =>
        services
            // Without a name, the formatter takes its time from options that nobody sets any more.
            .Configure<ConsoleLoggerOptions>(o => o.FormatterName ??= ConsoleFormatterNames.Simple)
            .Configure<SimpleConsoleFormatterOptions>(SayWhen)
            .Configure<JsonConsoleFormatterOptions>(SayWhen);

    private static void SayWhen(ConsoleFormatterOptions options)
    {
        if (options.TimestampFormat is null)
        {
            (options.TimestampFormat, options.UseUtcTimestamp) = (Instant, true);
        }
    }
}
