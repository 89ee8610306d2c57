using WeldTrace.Domain.People;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Procedures;

/// <summary>One revision of a welding procedure: pWPS while on trial, WPS once released.</summary>
public sealed partial class ProcedureRevision : Record
{
    /// <summary>Longest procedure number.</summary>
    public const int LongestNumber = 30;

    /// <summary>Longest title or reason.</summary>
    public const int LongestText = 200;

    /// <summary>What the signature means that puts a revision on trial.</summary>
    public const string TrialMeaning =
        "I put this procedure on trial; it may be used on test pieces.";

    /// <summary>What the signature under the acceptance of a qualification means.</summary>
    public const string QualifyMeaning = "I accept the qualification results of this procedure.";

    /// <summary>What the signature under a release means.</summary>
    public const string ReleaseMeaning = "I release this procedure for production.";

    /// <summary>What the signature under a withdrawal means.</summary>
    public const string WithdrawMeaning =
        "I withdraw this procedure for the reason given; nothing is welded by it any more.";

    private ProcedureRevision(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "procedure-revision";

    /// <inheritdoc/>
    public override string Label => $"{Number} rev {Revision}";

    /// <summary>Procedure number, the same for all its revisions.</summary>
    public string Number { get; private set; } = "";

    /// <summary>Revision counted from 1; see <see cref="Revision"/>.</summary>
    public int RevisionIndex { get; private set; }

    /// <summary>Revision letters as printed: A, B, ... Z, AA.</summary>
    public string Revision => RevisionLetters.Of(RevisionIndex);

    /// <summary>What the procedure is for.</summary>
    public string Title { get; private set; } = "";

    /// <summary>State.</summary>
    public ProcedureState State { get; private set; }

    /// <summary>What it lays down.</summary>
    public ProcedureContent Content { get; private set; } = null!;

    /// <summary>Who wrote it.</summary>
    public Guid AuthorId { get; private set; }

    /// <summary>Printed name of the author.</summary>
    public string AuthorName { get; private set; } = "";

    /// <summary>Revision from which this one was made.</summary>
    public Guid? BasedOnId { get; private set; }

    /// <summary>Why this revision was made.</summary>
    public string ChangeReason { get; private set; } = "";

    /// <summary>Revision that took its place.</summary>
    public Guid? SupersededById { get; private set; }

    /// <summary>Qualification record behind it, with the range that it covers; null before it is qualified, and in revisions from before it was asked for.</summary>
    public QualifiedBy? Qualified { get; private set; }

    /// <summary>Writes the first revision of a new procedure.</summary>
    public static Outcome<ProcedureRevision> Write(
        string number,
        string title,
        ProcedureContent content,
        Actor actor,
        DateTimeOffset at
    ) => Make(number, 1, title, content, null, "first revision", actor, at);

    /// <summary>Writes the next revision from this one; this one stays as it is until the next is released.</summary>
    /// <param name="nextIndex">Highest existing index of this number plus one.</param>
    /// <param name="reason">Why; 1 to 200 characters.</param>
    /// <param name="actor">Author.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome<ProcedureRevision> Revise(
        int nextIndex,
        string reason,
        Actor actor,
        DateTimeOffset at
    ) => Make(Number, nextIndex, Title, Content, Id, reason, actor, at);

    /// <summary>Changes a draft.</summary>
    public Outcome Edit(string title, ProcedureContent content, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (State != ProcedureState.Draft)
        {
            return Outcome.Refused(
                "state",
                $"{Label} is {StateWord(State)} and can't be edited; make a new revision from it."
            );
        }

        var refusals = Check(Number, title, content, actor);
        if (refusals.Count == 0)
        {
            (Title, Content) = (title.Trim(), content);
            Note(actor, at, "procedure edited");
        }

        return Outcome.From(refusals);
    }

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(ProcedureState state) =>
        state switch
        {
            ProcedureState.Draft => "draft",
            ProcedureState.Trial => "trial",
            ProcedureState.Qualified => "qualified",
            ProcedureState.Released => "released",
            ProcedureState.Superseded => "superseded",
            ProcedureState.Withdrawn => "withdrawn",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    private static Outcome<ProcedureRevision> Make(
        string number,
        int index,
        string title,
        ProcedureContent content,
        Guid? basedOn,
        string reason,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(actor);
        var refusals = Check(number, title, content, actor);
        RequireText(reason, "Give the reason for the revision", nameof(ChangeReason), refusals);
        if (refusals.Count > 0)
        {
            return refusals;
        }

        var revision = new ProcedureRevision(Guid.CreateVersion7(at))
        {
            Number = number.Trim(),
            RevisionIndex = index,
            Title = title.Trim(),
            Content = content,
            AuthorId = actor.PersonId,
            AuthorName = actor.PrintedName,
            BasedOnId = basedOn,
            ChangeReason = reason.Trim(),
        };
        revision.Note(actor, at, "procedure written", reason.Trim());
        return revision;
    }

    private static List<Refusal> Check(
        string number,
        string title,
        ProcedureContent content,
        Actor actor
    )
    {
        List<Refusal> refusals = [];
        RequireRole(actor, [Role.Engineer], refusals);
        if (string.IsNullOrWhiteSpace(number) || number.Length > LongestNumber)
        {
            refusals.Add(
                new(
                    "number",
                    $"Give the procedure's number, 1 to {LongestNumber} characters.",
                    nameof(Number)
                )
            );
        }

        RequireText(title, "Give the title", nameof(Title), refusals);
        refusals.AddRange(content.Check());
        return refusals;
    }

    private static void RequireText(string? text, string ask, string field, List<Refusal> refusals)
    {
        if (string.IsNullOrWhiteSpace(text) || text.Length > LongestText)
        {
            refusals.Add(new("missing", $"{ask}, 1 to {LongestText} characters.", field));
        }
    }

    private static void RequireRole(Actor actor, IReadOnlyList<Role> roles, List<Refusal> refusals)
    {
        if (RoleRules.Require(actor, roles) is { } refusal)
        {
            refusals.Add(refusal);
        }
    }
}
