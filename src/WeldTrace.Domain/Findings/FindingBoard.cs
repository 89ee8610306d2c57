using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Findings;

/// <summary>A decision of the material review board.</summary>
/// <param name="Reference">Number of the minutes.</param>
/// <param name="Members">Who sat on it.</param>
/// <param name="Text">What was decided.</param>
/// <param name="PersonId">Who recorded it.</param>
/// <param name="PrintedName">Printed name.</param>
/// <param name="At">UTC instant.</param>
public sealed record BoardDecision(
    string Reference,
    string Members,
    string Text,
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At
);

// What the material review board decided.
public sealed partial class Finding
{
    /// <summary>What the signature under a board decision means.</summary>
    public const string BoardMeaning =
        "I record the decision of the material review board as it stands in its minutes.";

    /// <summary>Records what the material review board decided.</summary>
    /// <param name="reference">Number of the minutes; 1 to 80 characters.</param>
    /// <param name="members">Who sat on it; 1 to 400 characters.</param>
    /// <param name="text">What was decided; 1 to 1000 characters.</param>
    /// <param name="actor">Quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome RecordBoard(
        string reference,
        string members,
        string text,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.QualityManager)
            .Text(reference, 80, "Give the number of the minutes", nameof(BoardDecision.Reference))
            .Text(members, 400, "Name who sat on the board", nameof(BoardDecision.Members))
            .Text(text, LongestText, "Say what was decided", nameof(BoardDecision.Text))
            .That(
                State == FindingState.Open,
                "state",
                $"{Label} is {StateWord(State)}; the board decides before the disposition."
            );
        if (checks.AllHold)
        {
            Board = new(
                reference.Trim(),
                members.Trim(),
                text.Trim(),
                actor.PersonId,
                actor.PrintedName,
                at
            );
            Note(actor, at, "board decision recorded", Board.Text);
        }

        return checks.ToOutcome();
    }
}
