namespace WeldTrace.Web.Demo;

/// <summary>The time in the invented past: it starts some weeks ago and goes on with each act, never past now.</summary>
internal sealed class DemoClock(DateTimeOffset now, TimeSpan ago)
{
    private DateTimeOffset _at = now - ago;

    /// <summary>Lets time pass and says what it is then.</summary>
    public DateTimeOffset After(TimeSpan time)
    {
        var next = _at + time;
        _at = next < now ? next : _at + TimeSpan.FromMilliseconds(1);
        return _at;
    }

    /// <summary>The day that it is.</summary>
    public DateOnly Today => DateOnly.FromDateTime(_at.UtcDateTime);

    public DateTimeOffset AfterMinutes(double minutes) => After(TimeSpan.FromMinutes(minutes));

    /// <summary>Goes to a later moment, so many hours before now.</summary>
    public void GoTo(double hoursBeforeNow)
    {
        var at = now - TimeSpan.FromHours(hoursBeforeNow);
        _at = at > _at ? at : _at;
    }
}
