namespace WeldTrace.Persistence.Accounts;

/// <summary>How somebody signed in.</summary>
public enum SignInWay
{
    /// <summary>Name and password, with a code of the second factor where one is set up.</summary>
    Password,

    /// <summary>A passkey.</summary>
    Passkey,

    /// <summary>A PIN on the shared tablet for which it was set.</summary>
    Pin,
}

/// <summary>Why a session ended before its time was over.</summary>
public enum SessionEnd
{
    /// <summary>Its owner signed out.</summary>
    SignedOut,

    /// <summary>Somebody signed in anew on the same device.</summary>
    SignedInAgain,

    /// <summary>Another person took over the device.</summary>
    OtherPerson,

    /// <summary>Its owner ended it from another device.</summary>
    OwnerElsewhere,

    /// <summary>The password or the second factor was changed.</summary>
    NewMeans,

    /// <summary>An administrator ended it, set a new password or set the person inactive.</summary>
    Administrator,

    /// <summary>The shared tablet was withdrawn.</summary>
    TabletWithdrawn,
}

/// <summary>Whether a session is still good.</summary>
public enum SessionState
{
    /// <summary>Good.</summary>
    Open,

    /// <summary>Its time is over.</summary>
    RanOut,

    /// <summary>It was ended.</summary>
    Ended,
}

/// <summary>One sign-in of a person, until it ends. Its ticket is worth nothing without this row.</summary>
public sealed class AccountSession
{
    /// <summary>Longest words for a device.</summary>
    public const int LongestDevice = 80;

    /// <summary>After so long everybody signs in again, busy or not (NIST SP 800-63B 4.2.3).</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromHours(12);

    /// <summary>After so long without a page it is over.</summary>
    public static readonly TimeSpan Idle = TimeSpan.FromMinutes(30);

    /// <summary>The same of a session that a PIN began.</summary>
    public static readonly TimeSpan PinIdle = TimeSpan.FromMinutes(10);

    /// <summary>When it was last seen is written no more often than this, so that reading pages writes nothing.</summary>
    public static readonly TimeSpan SeenEvery = TimeSpan.FromMinutes(5);

    /// <summary>After so long it is deleted, ended or not.</summary>
    public static readonly TimeSpan KeptFor = TimeSpan.FromDays(30);

    /// <summary>As the sealed ticket names it.</summary>
    public required Guid Id { get; init; }

    /// <summary>Whose it is.</summary>
    public required Guid AccountId { get; init; }

    /// <summary>How its owner signed in.</summary>
    public required SignInWay Way { get; init; }

    /// <summary>Kind of device, in words.</summary>
    public required string Device { get; init; }

    /// <summary>The shared tablet on which it was begun; null on any other device.</summary>
    public Guid? TabletId { get; init; }

    /// <summary>UTC instant of the sign-in.</summary>
    public required DateTimeOffset BegunAt { get; init; }

    /// <summary>UTC instant at which it was last seen, within <see cref="SeenEvery"/>.</summary>
    public required DateTimeOffset LastSeenAt { get; set; }

    /// <summary>UTC instant of the first signature, with name and password or passkey; null before it.</summary>
    public DateTimeOffset? SignedAt { get; set; }

    /// <summary>UTC instant at which it was ended; null when it was not.</summary>
    public DateTimeOffset? EndedAt { get; private set; }

    /// <summary>Why it was ended; null when it was not.</summary>
    public SessionEnd? EndedBecause { get; private set; }

    /// <summary>After so long without a page this one is over.</summary>
    public TimeSpan IdleTime => Way == SignInWay.Pin ? PinIdle : Idle;

    /// <summary>Ends it; the first reason stands.</summary>
    public void End(SessionEnd because, DateTimeOffset at)
    {
        if (EndedAt is null)
        {
            (EndedBecause, EndedAt) = (because, at);
        }
    }

    /// <summary>Whether it is still good. A ticket may run out up to <see cref="SeenEvery"/> earlier, since that is how coarse this is.</summary>
    public SessionState StateAt(DateTimeOffset now) =>
        EndedAt is not null ? SessionState.Ended
        : now - BegunAt > Longest || now - LastSeenAt > IdleTime + SeenEvery ? SessionState.RanOut
        : SessionState.Open;
}
