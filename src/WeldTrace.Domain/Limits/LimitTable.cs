using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Limits;

/// <summary>What a table says and where it stands.</summary>
/// <param name="Title">What it is; 1 to 120 characters.</param>
/// <param name="Source">Where it stands.</param>
/// <param name="Rows">Cells of each row, in the order of the kind's columns.</param>
public sealed record LimitText(
    string Title,
    LimitSource Source,
    IReadOnlyList<IReadOnlyList<string>> Rows
);

/// <summary>
/// One edition of a table of limits or of a rule set. It is never edited: a change is a new edition, so that a record keeps the one
/// that it was judged by.
/// </summary>
public sealed class LimitTable : Record
{
    /// <summary>Longest code.</summary>
    public const int LongestCode = 30;

    /// <summary>Longest title, part of the source, or reason.</summary>
    public const int LongestText = 120;

    /// <summary>Most rows.</summary>
    public const int MostRows = 200;

    /// <summary>What the signature under a new edition means.</summary>
    public const string EnterMeaning =
        "I enter these limits with their source; work is judged by them from now on.";

    /// <summary>What the signature under a check means.</summary>
    public const string CheckMeaning =
        "I have compared every row with the site's own copy of the source, and they agree.";

    private const string Source5006 = "NASA-STD-5006A w/Change 2 GWR 2, 3";

    private LimitTable(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "limit-table";

    /// <inheritdoc/>
    public override string Label => FormattableString.Invariant($"{Code} edition {Edition}");

    /// <summary>Code, the same for all editions.</summary>
    public string Code { get; private set; } = "";

    /// <summary>Edition at this site, counted from 1.</summary>
    public int Edition { get; private set; }

    /// <summary>What it is for.</summary>
    public LimitKind Covers { get; private set; }

    /// <summary>What it says.</summary>
    public LimitText Text { get; private set; } = null!;

    /// <summary>How it came about.</summary>
    public LimitEvidence Evidence { get; private set; }

    /// <summary>Why this edition was made.</summary>
    public string ChangeReason { get; private set; } = "";

    /// <summary>Comparison with the site's own copy; null while nobody has made it.</summary>
    public OwnCopyCheck? OwnCheck { get; private set; }

    /// <summary>Edition that took its place; null while it is the current one.</summary>
    public Guid? SupersededById { get; private set; }

    /// <summary>Whether it was compared with the site's own copy.</summary>
    public bool IsChecked => OwnCheck is not null;

    /// <summary>The edition as a record that was judged by it keeps it.</summary>
    public LimitReference Reference => new(Id, Label, Text.Source.ToString(), IsChecked);

    /// <summary>Enters a new table.</summary>
    public static Outcome<LimitTable> Enter(
        string code,
        LimitKind kind,
        LimitText text,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(text);
        var checks = new Checks()
            .Role(actor, Role.QualityManager)
            .Text(code, LongestCode, "Give the table a code", nameof(Code));
        LimitChecks.Check(checks, kind, text);
        return checks.AllHold
            ? Make(code.Trim(), 1, kind, text, LimitEvidence.OwnEntry, "first edition", actor, at)
            : checks.Refusals;
    }

    /// <summary>The next edition; this one is superseded by the same act.</summary>
    /// <param name="text">What it says from now on.</param>
    /// <param name="reason">Why; 1 to 120 characters.</param>
    /// <param name="actor">Quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome<LimitTable> Revise(LimitText text, string reason, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(text);
        var checks = new Checks()
            .Role(actor, Role.QualityManager)
            .Text(reason, LongestText, "Give the reason for the new edition", nameof(ChangeReason))
            .That(
                SupersededById is null,
                "superseded",
                $"{Label} has a later edition; revise that one."
            );
        LimitChecks.Check(checks, Covers, text);
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var next = Make(
            Code,
            Edition + 1,
            Covers,
            text,
            LimitEvidence.OwnEntry,
            reason.Trim(),
            actor,
            at
        );
        SupersededById = next.Id;
        Note(actor, at, "limits superseded", $"by edition {next.Edition}");
        return next;
    }

    /// <summary>Notes that somebody compared the table with the site's own copy of its source.</summary>
    /// <param name="ownCopy">Which copy; 1 to 120 characters.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome CheckAgainst(string ownCopy, DateOnly today, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.QualityManager)
            .Text(
                ownCopy,
                LongestText,
                "Say which copy of the source you have before you",
                nameof(OwnCopyCheck.OwnCopy)
            )
            .That(!IsChecked, "state", $"{Label} was checked already by {OwnCheck?.ByName}.")
            .That(
                SupersededById is null,
                "superseded",
                $"{Label} has a later edition; check that one."
            );
        if (checks.AllHold)
        {
            OwnCheck = new OwnCopyCheck(actor.PersonId, actor.PrintedName, today, ownCopy.Trim());
            Note(actor, at, "limits checked against own copy", Source5006);
        }

        return checks.ToOutcome();
    }

    internal static LimitTable Make(
        string code,
        int edition,
        LimitKind kind,
        LimitText text,
        LimitEvidence evidence,
        string reason,
        Actor actor,
        DateTimeOffset at
    )
    {
        var table = new LimitTable(Guid.CreateVersion7(at))
        {
            Code = code,
            Edition = edition,
            Covers = kind,
            Text = text,
            Evidence = evidence,
            ChangeReason = reason,
        };
        table.Note(actor, at, "limits entered", reason);
        return table;
    }
}
