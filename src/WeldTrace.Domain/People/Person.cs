using WeldTrace.Domain.Access;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.People;

/// <summary>A person of the site. Never deleted, so that a signature keeps its name; set inactive instead.</summary>
public sealed class Person : Record
{
    /// <summary>Longest printed name.</summary>
    public const int LongestName = 80;

    private Person(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "person";

    /// <inheritdoc/>
    public override string Label => PrintedName;

    /// <summary>Name as printed beside signatures.</summary>
    public string PrintedName { get; private set; } = "";

    /// <summary>Name used to sign in; unique.</summary>
    public string SignInName { get; private set; } = "";

    /// <summary>Roles held now.</summary>
    public IReadOnlyList<Role> Roles { get; private set; } = [];

    /// <summary>Whether the person may sign in.</summary>
    public bool IsActive { get; private set; }

    /// <summary>Enters a new person.</summary>
    /// <param name="printedName">1 to 80 characters.</param>
    /// <param name="signInName">Unique sign-in name.</param>
    /// <param name="roles">At least one role.</param>
    /// <param name="enteredBy">Who enters the person; null when the first administrator enters themself.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<Person> Enter(
        string printedName,
        string signInName,
        IReadOnlyList<Role> roles,
        Actor? enteredBy,
        DateTimeOffset at
    )
    {
        var refusals = Check(printedName, roles);
        if (!IsName(signInName))
        {
            refusals.Add(
                new Refusal(
                    "sign-in-name",
                    $"Give a sign-in name of 1 to {LongestName} characters.",
                    nameof(SignInName)
                )
            );
        }

        if (refusals.Count > 0)
        {
            return refusals;
        }

        var person = new Person(Guid.CreateVersion7(at))
        {
            PrintedName = printedName.Trim(),
            SignInName = signInName.Trim(),
            Roles = [.. roles.Distinct().Order()],
            IsActive = true,
        };
        person.Note(enteredBy ?? person.AsActor(), at, "person entered");
        return person;
    }

    /// <summary>Changes what the person may do; the printed name stays with signatures already made.</summary>
    public Outcome Change(
        string printedName,
        IReadOnlyList<Role> roles,
        bool isActive,
        Actor actor,
        DateTimeOffset at
    )
    {
        var refusals = Check(printedName, roles);
        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        PrintedName = printedName.Trim();
        Roles = [.. roles.Distinct().Order()];
        IsActive = isActive;
        Note(actor, at, isActive ? "person changed" : "person set inactive");
        return Outcome.Accepted;
    }

    /// <summary>States a change of the means by which the person signs in: of one's own, or by an administrator with a reason.</summary>
    /// <param name="change">What changed.</param>
    /// <param name="detail">Name of the passkey or tablet, or the reason of whoever else changes it.</param>
    /// <param name="actor">Who changes it.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome ChangeSignInMeans(
        SignInMeans change,
        string? detail,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks();
        _ = change switch
        {
            SignInMeans.Reset or SignInMeans.SessionsEnded => checks
                .Role(actor, Role.Administrator)
                .Text(detail, LongestName, "Say why", "Reason"),
            SignInMeans.BadgeMade => checks.Role(actor, Role.QualityManager, Role.Administrator),
            SignInMeans.BadgeWithdrawn => checks
                .Role(actor, Role.QualityManager, Role.Administrator)
                .Text(detail, LongestName, "Say why", "Reason"),
            SignInMeans.PinSet => checks
                .Add(OnlyOwn(actor))
                .That(
                    !Roles.Contains(Role.Administrator),
                    "administrator",
                    "An administrator signs in with password or passkey only: a PIN is too weak for what an administrator may do."
                ),
            _ => checks.Add(OnlyOwn(actor)),
        };
        if (checks.AllHold)
        {
            Note(actor, at, Word(change), detail?.Trim());
        }

        return checks.ToOutcome();
    }

    /// <summary>States that a tablet erased the person's PIN after too many wrong ones.</summary>
    /// <param name="tablet">Tablet.</param>
    /// <param name="at">UTC instant.</param>
    public void LosePin(SharedTablet tablet, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(tablet);
        Note(
            tablet.AsActor(),
            at,
            $"PIN erased after {PinRules.MostWrong} wrong ones",
            tablet.Name
        );
    }

    /// <summary>The person as one who acts.</summary>
    public Actor AsActor() => new(Id, PrintedName, Roles);

    private static string Word(SignInMeans change) =>
        change switch
        {
            SignInMeans.SecondFactorSetUp => "second factor set up",
            SignInMeans.SecondFactorRemoved => "second factor removed",
            SignInMeans.PasskeyAdded => "passkey added",
            SignInMeans.PasskeyRemoved => "passkey removed",
            SignInMeans.Reset => "second factor, passkeys and PINs reset",
            SignInMeans.SessionsEnded => "all sessions ended",
            SignInMeans.BadgeMade => "badge made",
            SignInMeans.BadgeWithdrawn => "badge withdrawn",
            SignInMeans.PinSet => "PIN set on a tablet",
            SignInMeans.PinErased => "PIN erased",
            _ => throw new ArgumentOutOfRangeException(nameof(change), change, "Unknown change."),
        };

    private IEnumerable<Refusal> OnlyOwn(Actor actor)
    {
        if (actor.PersonId != Id)
        {
            yield return new Refusal(
                "own",
                $"Only {PrintedName} sets up or removes these; an administrator can reset them."
            );
        }
    }

    private static bool IsName(string text) =>
        !string.IsNullOrWhiteSpace(text) && text.Length <= LongestName && !text.Any(char.IsControl);

    private static List<Refusal> Check(string printedName, IReadOnlyList<Role> roles)
    {
        List<Refusal> refusals = [];
        if (!IsName(printedName))
        {
            refusals.Add(
                new Refusal(
                    "printed-name",
                    $"Give the printed name in one line, 1 to {LongestName} characters.",
                    nameof(PrintedName)
                )
            );
        }

        if (roles.Count == 0)
        {
            refusals.Add(new Refusal("roles", "Choose at least one role.", nameof(Roles)));
        }

        return refusals;
    }
}
