using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.People;

/// <summary>Floor rule F17: nobody signs the inspection of what they welded.</summary>
public static class SecondPerson
{
    /// <summary>The refusal when the actor is among those who welded; nothing otherwise.</summary>
    /// <param name="weldedBy">Everyone who welded on the vessel.</param>
    /// <param name="actor">Who wants to sign.</param>
    public static IEnumerable<Refusal> Check(IReadOnlyCollection<Guid> weldedBy, Actor actor)
    {
        ArgumentNullException.ThrowIfNull(weldedBy);
        ArgumentNullException.ThrowIfNull(actor);
        if (weldedBy.Contains(actor.PersonId))
        {
            yield return new Refusal(
                "F17",
                "You welded on this vessel, so another inspector must sign. Ask a colleague.",
                null,
                "ISO 25239-5:2020 4.3.2; 21 CFR 11.10(g) as a model"
            );
        }
    }
}
