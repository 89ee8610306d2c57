using WeldTrace.Domain.Material;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>State of a design revision.</summary>
public enum DesignState
{
    /// <summary>Being drawn.</summary>
    Draft,

    /// <summary>Vessels may be planned to it.</summary>
    Released,

    /// <summary>A later revision was released.</summary>
    Superseded,
}

/// <summary>What a design revision lays down; frozen once released.</summary>
/// <param name="Alloy">Parent alloy.</param>
/// <param name="Temper">Parent temper.</param>
/// <param name="InnerDiameter">Inner diameter; above zero.</param>
/// <param name="WallThickness">Wall; above zero.</param>
/// <param name="Volume">Inner volume; above zero.</param>
/// <param name="AllowableStress">Stress that the design allows at the operating pressure, welds included; above zero.</param>
/// <param name="Joints">Joints with their passes.</param>
/// <param name="Pressures">Pressures, limits and stages.</param>
/// <param name="Route">Steps in order.</param>
/// <param name="RequiredDocument">Weakest inspection document that a material lot may have; null when the design asks for none.</param>
public sealed record DesignContent(
    string Alloy,
    string Temper,
    Length InnerDiameter,
    Length WallThickness,
    Volume Volume,
    Pressure AllowableStress,
    IReadOnlyList<Joint> Joints,
    PressurePlan Pressures,
    IReadOnlyList<RouteTemplateStep> Route,
    InspectionDocumentType? RequiredDocument = null
)
{
    /// <summary>The joint of a code; null when there is none.</summary>
    public Joint? Joint(string? code) => Joints.FirstOrDefault(j => j.Code == code);

    /// <summary>Everything that is wrong.</summary>
    public IReadOnlyList<Refusal> Check()
    {
        var checks = new Checks()
            .Text(Alloy, 60, "Give the parent alloy", nameof(Alloy))
            .Text(Temper, 60, "Give the temper", nameof(Temper))
            .That(
                InnerDiameter > Length.Zero,
                "diameter",
                "Give the inner diameter, above zero.",
                nameof(InnerDiameter)
            )
            .That(
                WallThickness > Length.Zero,
                "wall",
                "Give the wall thickness, above zero.",
                nameof(WallThickness)
            )
            .That(
                Volume > Volume.Zero,
                "volume",
                "Give the inner volume, above zero.",
                nameof(Volume)
            )
            .That(
                AllowableStress > Pressure.Zero,
                "stress",
                "Give the allowable stress, above zero.",
                nameof(AllowableStress)
            )
            .That(Joints.Count > 0, "joints", "A design needs at least one joint.", nameof(Joints))
            .That(
                Joints.Select(j => j.Code).Distinct().Count() == Joints.Count,
                "joints",
                "Two joints have the same code; change one.",
                nameof(Joints)
            );
        foreach (var joint in Joints)
        {
            joint.Check(checks);
        }

        Pressures.Check(checks);
        CheckRoute(checks);
        return checks.Refusals;
    }

    private void CheckRoute(Checks checks)
    {
        checks
            .That(Route.Count > 0, "route", "The route needs steps.", nameof(Route))
            .That(
                Route.Zip(Route.Skip(1)).All(p => p.First.Sequence < p.Second.Sequence),
                "route",
                "Number the steps of the route in rising order.",
                nameof(Route)
            );
        foreach (var step in Route)
        {
            checks.Text(step.Title, 120, $"Give step {step.Sequence} a title", nameof(Route));
            if (step.Kind is StepKind.Weld or StepKind.Section)
            {
                checks.That(
                    Joint(step.JointCode) is not null,
                    "route",
                    $"Step {step.Sequence} names joint '{step.JointCode}', which the design doesn't have.",
                    nameof(Route)
                );
            }

            if (step.Kind == StepKind.Weld)
            {
                checks.That(
                    step.PassNumber is { } pass && Joint(step.JointCode)?.Pass(pass) is not null,
                    "route",
                    $"Step {step.Sequence} names pass {step.PassNumber} of joint {step.JointCode}, which the design doesn't have.",
                    nameof(Route)
                );
            }
        }

        foreach (var (joint, pass) in Joints.SelectMany(j => j.Passes.Select(p => (j, p))))
        {
            var count = Route.Count(s =>
                s.Kind == StepKind.Weld && s.JointCode == joint.Code && s.PassNumber == pass.Number
            );
            checks.That(
                count == 1,
                "route",
                $"Pass {pass.Number} of joint {joint.Code} is welded by {count} steps of the route; one is right.",
                nameof(Route)
            );
        }
    }
}

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
