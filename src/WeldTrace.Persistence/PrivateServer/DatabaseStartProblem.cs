namespace WeldTrace.Persistence.PrivateServer;

/// <summary>Why the database could not be made ready, so that callers can tell the cases apart.</summary>
public enum DatabaseStartProblem
{
    FolderInUse,
    FolderNotUsable,
    FolderNotWalkable,
    FolderOfAnotherAccount,
    NoServerPrograms,
    NewerVersion,
    NoSpaceLeft,
    PasswordLost,
    ServerDidNotStart,
    ServerNotReachable,
    ApplicationRoleMissing,
    UpgradeFailed,
    DemonstrationUnfinished,
}
