namespace WeldTrace.Persistence.Accounts;

/// <summary>The PIN of a person on one shared tablet.</summary>
public sealed class AccountPin
{
    /// <summary>Whose it is.</summary>
    public required Guid AccountId { get; init; }

    /// <summary>The only tablet on which it is worth something.</summary>
    public required Guid TabletId { get; init; }

    /// <summary>Its hash, made as those of passwords.</summary>
    public required string PinHash { get; set; }

    /// <summary>UTC instant at which it was set.</summary>
    public required DateTimeOffset SetAt { get; set; }

    /// <summary>How often it was given wrong since it was last right.</summary>
    public int WrongInARow { get; set; }

    /// <summary>UTC instant before which none is looked at; null when none is held up.</summary>
    public DateTimeOffset? HeldUntil { get; set; }
}
