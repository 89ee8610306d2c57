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
}
