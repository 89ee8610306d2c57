using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Features.OwnAccount.Sessions;

/// <summary>Says in words how a session began and ended.</summary>
public static class SessionWords
{
    public static string Of(SignInWay way) =>
        way switch
        {
            SignInWay.Password => "password",
            SignInWay.Passkey => "passkey",
            SignInWay.Pin => "PIN",
            _ => throw new ArgumentOutOfRangeException(nameof(way), way, "Unknown way."),
        };

    public static string Of(SessionState state, SessionEnd? because) =>
        state switch
        {
            SessionState.Open => "open",
            SessionState.RanOut => "ran out",
            _ => because switch
            {
                SessionEnd.SignedOut => "signed out",
                SessionEnd.SignedInAgain => "signed in anew",
                SessionEnd.OtherPerson => "another person took over",
                SessionEnd.TabletWithdrawn => "tablet withdrawn",
                SessionEnd.OwnerElsewhere => "ended by you",
                SessionEnd.NewMeans => "ended by a new password or second factor",
                SessionEnd.Administrator => "ended by an administrator",
                _ => throw new ArgumentOutOfRangeException(
                    nameof(because),
                    because,
                    "Unknown end."
                ),
            },
        };
}
