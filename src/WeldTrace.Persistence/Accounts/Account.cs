using Microsoft.AspNetCore.Identity;

namespace WeldTrace.Persistence.Accounts;

/// <summary>The means by which a person signs in. Who the person is and may do stands in the person's record.</summary>
public sealed class Account : IdentityUser<Guid>
{
    public required Guid PersonId { get; set; }

    /// <summary>Someone else set the password, so it proves nothing until its owner has changed it.</summary>
    public bool MustChangePassword { get; set; }

    /// <summary>The 30 s step of the last code of the authenticator app that was taken: none is taken twice. Null before the first.</summary>
    public long? LastCodeStep { get; set; }

    /// <summary>SHA-256 of the word of the badge, which names its owner at a shared tablet and proves nothing; null without a badge.</summary>
    public string? BadgeSha256 { get; set; }
}
