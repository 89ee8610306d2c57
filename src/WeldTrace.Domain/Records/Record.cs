namespace WeldTrace.Domain.Records;

/// <summary>
/// A record of the site: identified for ever, counted in versions, and never changed without a stated act.
/// Each save of a changed record writes one ledger entry that holds the whole record.
/// </summary>
public abstract class Record
{
    private readonly List<RecordedAct> _pendingActs = [];

    /// <summary>Makes a record with a new identity, or is used by the storage when it reads one.</summary>
    /// <param name="id">UUID of version 7.</param>
    protected Record(Guid id) => Id = id;

    /// <summary>Identity, never reused.</summary>
    public Guid Id { get; private set; }

    /// <summary>Number of saves of this record, from 1; 0 before the first.</summary>
    public int Version { get; private set; }

    /// <summary>Short word for the kind of record, as written into the ledger, for instance <c>weld-run</c>.</summary>
    public abstract string Kind { get; }

    /// <summary>How a person names this record, for instance a serial number.</summary>
    public abstract string Label { get; }

    /// <summary>The vessels whose history this record belongs to.</summary>
    public virtual IReadOnlyList<Guid> ConcernedVessels => [];

    /// <summary>Whether the record is closed by a signature, so that neither program nor database lets it change.</summary>
    public virtual bool IsSealed => false;

    /// <summary>What was done to this record since it was last saved.</summary>
    public IReadOnlyList<RecordedAct> PendingActs => _pendingActs;

    /// <summary>Called by the storage when the pending acts go into the ledger: counts the version up by one.</summary>
    /// <exception cref="InvalidOperationException">Nothing was done to the record.</exception>
    public void CountVersion()
    {
        if (_pendingActs.Count == 0)
        {
            throw new InvalidOperationException($"{Kind} {Id} changed without a stated act.");
        }

        Version++;
    }

    /// <summary>Called by the storage once the save is durable.</summary>
    public void ForgetPendingActs() => _pendingActs.Clear();

    /// <summary>States what is being done, by whom, when and why.</summary>
    /// <param name="actor">Who acts.</param>
    /// <param name="at">UTC instant of the act.</param>
    /// <param name="act">A few words in the past tense, for instance <c>weld run ended</c>.</param>
    /// <param name="reason">Why, where a reason is asked for.</param>
    protected void Note(Actor actor, DateTimeOffset at, string act, string? reason = null)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (IsSealed && Version > 0 && _pendingActs.Count == 0)
        {
            throw new InvalidOperationException($"{Kind} {Id} is signed and can't change.");
        }

        _pendingActs.Add(new RecordedAct(actor.PersonId, actor.PrintedName, at, act, reason));
    }
}
