namespace WeldTrace.Domain.People;

/// <summary>What changed about the means by which a person proves who they are; the means themselves are no record.</summary>
public enum SignInMeans
{
    /// <summary>An authenticator app was set up as the second factor.</summary>
    SecondFactorSetUp,

    /// <summary>Its owner gave the second factor up.</summary>
    SecondFactorRemoved,

    /// <summary>A passkey was added.</summary>
    PasskeyAdded,

    /// <summary>Its owner removed a passkey.</summary>
    PasskeyRemoved,

    /// <summary>An administrator took second factor and passkeys away, for instance after a lost phone.</summary>
    Reset,

    /// <summary>An administrator ended every session of the person, for instance after a tablet was lost.</summary>
    SessionsEnded,

    /// <summary>A badge was made, which names the person at a shared tablet; an earlier one is worth nothing any more.</summary>
    BadgeMade,

    /// <summary>The badge was withdrawn.</summary>
    BadgeWithdrawn,

    /// <summary>A PIN was set on a shared tablet.</summary>
    PinSet,

    /// <summary>Its owner erased the PIN on a shared tablet.</summary>
    PinErased,
}
