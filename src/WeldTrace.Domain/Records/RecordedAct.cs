namespace WeldTrace.Domain.Records;

/// <summary>One thing that a person did to a record.</summary>
/// <param name="ActorId">Person who acted.</param>
/// <param name="ActorName">Printed name at the time of the act.</param>
/// <param name="At">UTC instant.</param>
/// <param name="Act">A few words in the past tense.</param>
/// <param name="Reason">Why, where a reason is asked for.</param>
public sealed record RecordedAct(
    Guid ActorId,
    string ActorName,
    DateTimeOffset At,
    string Act,
    string? Reason
);
