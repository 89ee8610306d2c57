using WeldTrace.Domain.Procedures;

namespace WeldTrace.Web.Features.Procedures.Show;

/// <summary>A signed act that takes a procedure revision one state on.</summary>
/// <param name="Key">Word in the posted form.</param>
/// <param name="From">State in which it is offered.</param>
/// <param name="Title">Heading of the signature.</param>
/// <param name="Meaning">What the signature means.</param>
/// <param name="Effect">What the act will do.</param>
public sealed record ProcedureMove(
    string Key,
    ProcedureState From,
    string Title,
    string Meaning,
    string Effect
)
{
    public static IReadOnlyList<ProcedureMove> All { get; } =
    [
        new(
            "trial",
            ProcedureState.Draft,
            "Put on trial",
            ProcedureRevision.TrialMeaning,
            "The content is frozen from now on: a later change is a new revision."
        ),
        new(
            "qualify",
            ProcedureState.Trial,
            "Accept the qualification",
            ProcedureRevision.QualifyMeaning,
            "A complete, signed qualification record that covers this revision is needed; the revision may then be released."
        ),
        new(
            "release",
            ProcedureState.Qualified,
            "Release for production",
            ProcedureRevision.ReleaseMeaning,
            "Production may weld by it at once; the revision released so far is superseded. Its author can't release it."
        ),
    ];

    public static ProcedureMove? NextFrom(ProcedureState state) =>
        All.FirstOrDefault(m => m.From == state);
}
