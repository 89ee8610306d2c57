using System.Collections.Concurrent;

namespace WeldTrace.Web.Security;

/// <summary>
/// The sessions in which somebody has signed, and those that were ended by signing out. It is kept in memory: after a restart of the
/// server the name is asked for again, and a ticket that was copied before its owner signed out is good until its idle time is over.
/// </summary>
public sealed class SessionBook(TimeProvider clock)
{
    private readonly ConcurrentDictionary<string, DateTimeOffset> _signed = new(
        StringComparer.Ordinal
    );
    private readonly ConcurrentDictionary<string, DateTimeOffset> _ended = new(
        StringComparer.Ordinal
    );

    public bool HasSigned(string session) => _signed.ContainsKey(session);

    public bool HasEnded(string session) => _ended.ContainsKey(session);

    public void Sign(string session) => Add(_signed, session);

    public void End(string session)
    {
        Add(_ended, session);
        _signed.TryRemove(session, out _);
    }

    // No session lasts longer, so nothing older is asked for.
    private void Add(ConcurrentDictionary<string, DateTimeOffset> sessions, string session)
    {
        var now = clock.GetUtcNow();
        sessions[session] = now;
        foreach (var (old, at) in sessions)
        {
            if (now - at > AccountClaims.LongestSession)
            {
                sessions.TryRemove(old, out _);
            }
        }
    }
}
