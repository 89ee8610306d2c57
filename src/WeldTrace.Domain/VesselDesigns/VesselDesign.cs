using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>One revision of a vessel's design.</summary>
public sealed class VesselDesign : Record
{
    /// <summary>Longest number.</summary>
    public const int LongestNumber = 30;

    /// <summary>Longest title or reason.</summary>
    public const int LongestText = 200;

    private VesselDesign(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "vessel-design";

    /// <inheritdoc/>
    public override string Label => $"{Number} rev {Revision}";

    /// <summary>Drawing number, the same for all revisions.</summary>
    public string Number { get; private set; } = "";

    /// <summary>Revision counted from 1.</summary>
    public int RevisionIndex { get; private set; }

    /// <summary>Revision letters.</summary>
    public string Revision => RevisionLetters.Of(RevisionIndex);

    /// <summary>What the vessel is.</summary>
    public string Title { get; private set; } = "";

    /// <summary>State.</summary>
    public DesignState State { get; private set; }

    /// <summary>What it lays down.</summary>
    public DesignContent Content { get; private set; } = null!;

    /// <summary>Who drew it.</summary>
    public Guid AuthorId { get; private set; }

    /// <summary>Printed name of the author.</summary>
    public string AuthorName { get; private set; } = "";

    /// <summary>Revision that took its place.</summary>
    public Guid? SupersededById { get; private set; }

    /// <summary>Draws the first revision of a new design.</summary>
    public static Outcome<VesselDesign> Draw(
        string number,
        string title,
        DesignContent content,
        Actor actor,
        DateTimeOffset at
    ) => Make(number, 1, title, content, "first revision", actor, at);

    /// <summary>Draws the next revision from this one.</summary>
    public Outcome<VesselDesign> Revise(
        int nextIndex,
        string reason,
        Actor actor,
        DateTimeOffset at
    ) => Make(Number, nextIndex, Title, Content, reason, actor, at);

    /// <summary>Changes a draft.</summary>
    public Outcome Edit(string title, DesignContent content, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(content);
        var checks = Check(Number, title, content, actor)
            .That(
                State == DesignState.Draft,
                "state",
                $"{Label} is {StateWord(State)} and can't be edited; make a new revision from it."
            );
        if (checks.AllHold)
        {
            (Title, Content) = (title.Trim(), content);
            Note(actor, at, "vessel design edited");
        }

        return checks.ToOutcome();
    }

    /// <summary>Draft to released, by someone who is not the author.</summary>
    /// <param name="earlier">The released revision of this number; superseded by this act. Null when there is none.</param>
    /// <param name="actor">Who releases.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Release(VesselDesign? earlier, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (
            earlier is not null
            && (earlier.Number != Number || earlier.State != DesignState.Released)
        )
        {
            throw new ArgumentException(
                "Only a released revision of the same number is superseded.",
                nameof(earlier)
            );
        }

        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .That(
                State == DesignState.Draft,
                "state",
                $"{Label} is {StateWord(State)}; only a draft is released."
            )
            .That(
                actor.PersonId != AuthorId,
                "F17",
                $"You drew {Label}; its release needs a second person. Ask another engineer or the quality manager."
            )
            .That(
                !(earlier?.RevisionIndex > RevisionIndex),
                "supersession",
                $"{earlier?.Label} is released and later than {Label}; an earlier revision doesn't take the place of one that came after it. Make a new revision from {Label} and release that."
            )
            .Add(Content.Check());
        if (checks.AllHold)
        {
            State = DesignState.Released;
            Note(actor, at, "vessel design released");
            earlier?.SupersedeBy(this, actor, at);
        }

        return checks.ToOutcome();
    }

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(DesignState state) =>
        state switch
        {
            DesignState.Draft => "draft",
            DesignState.Released => "released",
            DesignState.Superseded => "superseded",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    private void SupersedeBy(VesselDesign later, Actor actor, DateTimeOffset at)
    {
        (State, SupersededById) = (DesignState.Superseded, later.Id);
        Note(actor, at, "vessel design superseded", $"by revision {later.Revision}");
    }

    private static Outcome<VesselDesign> Make(
        string number,
        int index,
        string title,
        DesignContent content,
        string reason,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = Check(number, title, content, actor)
            .Text(reason, LongestText, "Give the reason for the revision", "Reason");
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var design = new VesselDesign(Guid.CreateVersion7(at))
        {
            Number = number.Trim(),
            RevisionIndex = index,
            Title = title.Trim(),
            Content = content,
            AuthorId = actor.PersonId,
            AuthorName = actor.PrintedName,
        };
        design.Note(actor, at, "vessel design drawn", reason.Trim());
        return design;
    }

    private static Checks Check(string number, string title, DesignContent content, Actor actor) =>
        new Checks()
            .Role(actor, Role.Engineer)
            .Text(number, LongestNumber, "Give the drawing number", nameof(Number))
            .Text(title, LongestText, "Give the title", nameof(Title))
            .Add(content.Check());
}
