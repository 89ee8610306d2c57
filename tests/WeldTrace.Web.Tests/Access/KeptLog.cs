using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace WeldTrace.Web.Tests.Access;

/// <summary>What the site has logged.</summary>
public sealed class KeptLog : ILoggerProvider
{
    private readonly ConcurrentQueue<string> _lines = new();

    public IReadOnlyCollection<string> Lines => _lines;

    public ILogger CreateLogger(string categoryName) => new Keeper(_lines);

    public void Dispose() { }

    private sealed class Keeper(ConcurrentQueue<string> lines) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel,
            EventId eventId,
            TState state,
            Exception? exception,
            Func<TState, Exception?, string> formatter
        ) => lines.Enqueue(formatter(state, exception));
    }
}
