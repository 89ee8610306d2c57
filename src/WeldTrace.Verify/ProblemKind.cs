namespace WeldTrace.Verify;

/// <summary>What is wrong with a file of a bundle.</summary>
public enum ProblemKind
{
    /// <summary>The bundle could harm the reader's machine, or is no bundle; nothing more was read.</summary>
    Refused,

    /// <summary>The file cannot be unpacked or read.</summary>
    Unreadable,

    /// <summary>The bytes are not those of the manifest.</summary>
    Changed,

    /// <summary>The manifest lists the file, or every bundle has it, but it is not there.</summary>
    Removed,

    /// <summary>The manifest does not list the file.</summary>
    Added,

    /// <summary>A signature does not fit.</summary>
    Signature,

    /// <summary>The inclusion proof of a ledger entry fails or is missing.</summary>
    Proof,

    /// <summary>A record is not what its newest ledger entry says.</summary>
    Record,

    /// <summary>No ledger entry of the bundle names the attachment or log.</summary>
    Unnamed,

    /// <summary>A record of the vessel or a proof speaks of something that the bundle does not hold.</summary>
    Missing,
}
