namespace WeldTrace.Browser.Tests;

/// <summary>The machine's clock, put forward as far as a test says; the timers stay as they are.</summary>
internal sealed class MovableClock : TimeProvider
{
    private TimeSpan _ahead;

    public DateOnly Today => DateOnly.FromDateTime(GetUtcNow().UtcDateTime);

    public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + _ahead;

    /// <summary>Lets time pass.</summary>
    public void Pass(TimeSpan time) => _ahead += time;
}
