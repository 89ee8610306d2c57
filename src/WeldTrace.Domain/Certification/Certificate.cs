using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Certification;

/// <summary>A person's certificate. It is never edited: a mistake is revoked and a new one is issued.</summary>
public sealed class Certificate : Record
{
    /// <summary>Longest number or word.</summary>
    public const int LongestText = 80;

    /// <summary>Longest reason or list of variables.</summary>
    public const int LongestReason = 400;

    /// <summary>What the signature under a new certificate means.</summary>
    public const string IssueMeaning =
        "I have seen the certificate and the results behind it, and enter it as written.";

    /// <summary>What the signature under a confirmation means.</summary>
    public const string ConfirmMeaning =
        "I confirm that this person has welded within the range of the certificate since the last confirmation.";

    /// <summary>What the signature under a revocation means.</summary>
    public const string RevokeMeaning = "I revoke this qualification for the reason given.";

    /// <summary>What the signature under a new test of vision means.</summary>
    public const string VisionMeaning = "I have seen the result of this person's test of vision.";

    private const int MonthsBetweenVisionTests = 12;

    private const string OperatorSource = "ISO 14732:2025 4.1, 6, 7 (second-hand); ISO 25239-3";

    private Certificate(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "certificate";

    /// <inheritdoc/>
    public override string Label => Number;

    /// <summary>Number; unique.</summary>
    public string Number { get; private set; } = "";

    /// <summary>Whose it is.</summary>
    public Guid PersonId { get; private set; }

    /// <summary>Printed name of that person.</summary>
    public string PersonName { get; private set; } = "";

    /// <summary>What it attests.</summary>
    public CertificateKind Attests { get; private set; }

    /// <summary>First day on which it is no longer valid.</summary>
    public DateOnly ExpiresOn { get; private set; }

    /// <summary>What is written on it.</summary>
    public CertificateText Text { get; private set; } = null!;

    /// <summary>SHA-256 of the scanned certificate; null when none was handed in.</summary>
    public string? FileSha256 { get; private set; }

    /// <summary>Confirmations of an operator's continued work, or later tests of an examiner's vision, oldest first.</summary>
    public IReadOnlyList<Confirmation> Confirmations { get; private set; } = [];

    /// <summary>Revocations, oldest first.</summary>
    public IReadOnlyList<Revocation> Revocations { get; private set; } = [];

    /// <summary>Day by which the next confirmation is due; null for certificates that need none.</summary>
    public DateOnly? ConfirmationDue => ConfirmationDueAsOf(DateOnly.MaxValue);

    /// <summary>First day on which it no longer holds as things stand: the nearer of expiry and due confirmation.</summary>
    public DateOnly EndsOn => ConfirmationDue is { } due && due < ExpiresOn ? due : ExpiresOn;

    /// <summary>Whether it covers nothing any more.</summary>
    public bool IsRevoked => Revocations.Any(r => r.JointTypes.Count == 0);

    /// <summary>What the signature under a confirmation means for this certificate.</summary>
    public string ConfirmationMeaning =>
        Attests == CertificateKind.Examiner ? VisionMeaning : ConfirmMeaning;

    /// <summary>Enters a certificate.</summary>
    /// <param name="person">Whose it is.</param>
    /// <param name="text">What is written on it.</param>
    /// <param name="fileSha256">Scanned certificate, if it was handed in.</param>
    /// <param name="others">The person's other certificates.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Who enters it; nobody enters their own.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<Certificate> Issue(
        Person person,
        CertificateText text,
        string? fileSha256,
        IReadOnlyList<Certificate> others,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(person);
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(others);
        var checks = new Checks().Role(actor, Role.QualityManager, Role.Engineer);
        CheckText(checks, text, today);
        CheckOverlap(checks, text, others);
        checks.That(
            actor.PersonId != person.Id,
            "F17",
            "Nobody enters their own certificate; ask the quality manager or another engineer."
        );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var certificate = new Certificate(Guid.CreateVersion7(at))
        {
            Number = text.Number.Trim(),
            PersonId = person.Id,
            PersonName = person.PrintedName,
            Attests = text.Kind,
            ExpiresOn = text.ExpiresOn,
            Text = text,
            FileSha256 = fileSha256,
        };
        certificate.Note(actor, at, "certificate entered");
        return certificate;
    }

    /// <summary>The responsible person confirms that the operator has gone on welding within the range, or that an examiner's vision was tested again.</summary>
    public Outcome Confirm(DateOnly today, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.QualityManager, Role.Engineer)
            .That(
                Attests != CertificateKind.Training,
                "kind",
                $"{Number} is a training; it needs no confirmation."
            )
            .That(actor.PersonId != PersonId, "F17", "Nobody confirms their own work.")
            .That(!IsRevoked, "state", $"{Number} was revoked; issue a new certificate.")
            .That(
                today < ExpiresOn,
                "expired",
                $"{Number} expired on {ExpiresOn:yyyy-MM-dd}; it is renewed by a new certificate."
            )
            .That(
                Attests != CertificateKind.WeldingOperator || today < ConfirmationDue,
                "lapsed",
                $"The confirmation was due by {ConfirmationDue:yyyy-MM-dd} and was missed, so the qualification has lapsed; it is renewed by a new certificate.",
                null,
                OperatorSource
            );
        if (checks.AllHold)
        {
            Confirmations = [.. Confirmations, new(today, actor.PersonId, actor.PrintedName)];
            Note(
                actor,
                at,
                Attests == CertificateKind.Examiner
                    ? "vision tested again"
                    : "continued work confirmed"
            );
        }

        return checks.ToOutcome();
    }

    /// <summary>Takes the qualification away, wholly or for the joint types in doubt.</summary>
    /// <param name="jointTypes">Joint types; empty for all.</param>
    /// <param name="reason">Why; 1 to 400 characters.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Who revokes.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Revoke(
        IReadOnlyList<string> jointTypes,
        string reason,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(jointTypes);
        ArgumentNullException.ThrowIfNull(actor);
        var unknown = jointTypes
            .Where(j => Text.Operator?.JointTypes.Contains(j) is not true)
            .ToList();
        var checks = new Checks()
            .Role(actor, Role.QualityManager)
            .Text(reason, LongestReason, "Give the reason", nameof(Revocation.Reason))
            .That(!IsRevoked, "state", $"{Number} was revoked already.")
            .That(
                unknown.Count == 0,
                "joint-type",
                $"{Number} doesn't cover {string.Join(", ", unknown)}; it covers {string.Join(", ", Text.Operator?.JointTypes ?? [])}.",
                nameof(Revocation.JointTypes)
            );
        if (checks.AllHold)
        {
            Revocations =
            [
                .. Revocations,
                new([.. jointTypes], reason.Trim(), today, actor.PrintedName),
            ];
            Note(actor, at, "certificate revoked", reason.Trim());
        }

        return checks.ToOutcome();
    }

    /// <summary>Day by which the next confirmation was due, as seen from a day; null for certificates that need none.</summary>
    /// <param name="day">Confirmations after it don't count.</param>
    public DateOnly? ConfirmationDueAsOf(DateOnly day) =>
        this switch
        {
            { Text.Operator: { } scope } => LastConfirmed(Text.TestedOn, day)
                .AddMonths(scope.ConfirmEveryMonths),
            { Text.Examiner: { } scope } => LastConfirmed(scope.VisionTestedOn, day)
                .AddMonths(MonthsBetweenVisionTests),
            _ => null,
        };

    private DateOnly LastConfirmed(DateOnly first, DateOnly asOf) =>
        Confirmations.LastOrDefault(c => c.On <= asOf)?.On ?? first;

    private static void CheckText(Checks checks, CertificateText text, DateOnly today)
    {
        checks
            .Text(text.Number, LongestText, "Give the certificate's number", nameof(text.Number))
            .Text(text.IssuedBy, LongestText, "Say who issued it", nameof(text.IssuedBy))
            .That(
                text.TestedOn <= today,
                "future",
                "The day of the test lies in the future; check it.",
                nameof(text.TestedOn)
            )
            .That(
                text.ExpiresOn > text.TestedOn && text.ExpiresOn <= text.TestedOn.AddYears(10),
                "expiry",
                "The expiry must lie after the test and at most ten years later; check both days.",
                nameof(text.ExpiresOn)
            );
        if (text.Kind == CertificateKind.Training)
        {
            checks.Text(
                text.Subject,
                LongestReason,
                "Say what the training was about",
                nameof(text.Subject)
            );
        }

        text.Operator?.Check(checks);
        text.Examiner?.Check(checks, today);
    }

    private static void CheckOverlap(
        Checks checks,
        CertificateText text,
        IReadOnlyList<Certificate> others
    )
    {
        foreach (var other in others.Where(o => !o.IsRevoked && Overlap(o.Text, text)))
        {
            checks.That(
                false,
                "overlap",
                $"Certificate {other.Number} covers the same until {other.ExpiresOn:yyyy-MM-dd}; revoke it first, or start this one when it expires.",
                nameof(text.TestedOn)
            );
        }
    }

    private static bool Overlap(CertificateText left, CertificateText right) =>
        left.TestedOn < right.ExpiresOn
        && right.TestedOn < left.ExpiresOn
        && (left, right) switch
        {
            ({ Operator: { } a }, { Operator: { } b }) => a.ControlMode.Equals(
                b.ControlMode,
                StringComparison.OrdinalIgnoreCase
            )
                && a.ToolType == b.ToolType
                && a.JointTypes.Intersect(b.JointTypes, StringComparer.OrdinalIgnoreCase).Any(),
            ({ Examiner: { } a }, { Examiner: { } b }) => a.Method == b.Method
                && string.Equals(a.Sector, b.Sector, StringComparison.OrdinalIgnoreCase),
            _ => false,
        };
}
