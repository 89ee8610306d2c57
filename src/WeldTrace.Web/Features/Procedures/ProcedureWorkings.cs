using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Features.Procedures.LiveFigures;

namespace WeldTrace.Web.Features.Procedures;

/// <summary>How the figures of a stored procedure revision are worked out.</summary>
public sealed class ProcedureWorkings(ProcedurePageReader reader) : IWorkings
{
    public const string Pitch = "pitch";
    public const string LeastPitch = "least-pitch";
    public const string GreatestPitch = "greatest-pitch";
    public const string Energy = "line-energy";
    public const string Heat = "peak-temperature";
    public const string Ligament = "ligament";

    private const string Word = "procedures";

    public string Kind => Word;

    /// <summary>Address of a working; null for a revision that isn't saved.</summary>
    public static string? At(Guid? revision, string key) =>
        revision is { } id ? Routes.Working(Word, id, key) : null;

    /// <summary>Key of a pass of a drawing that names the procedure.</summary>
    public static string Pass(DrawnJoint drawn, PassPlan pass) =>
        FormattableString.Invariant($"pass-{drawn.Design.Id:N}-{drawn.Joint.Code}-{pass.Number}");

    public async Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation)
    {
        if (await reader.FindAsync(id, cancellation) is not { } view)
        {
            return null;
        }

        var figures = WindowFigures.Of(view.Revision.Content, view.Tool?.Geometry, view.Pin);
        return new RecordWorkings(
            view.Revision.Label,
            Routes.Procedure(id),
            [.. figures is null ? [] : Of(figures), .. Passes(view)]
        );
    }

    private static IEnumerable<NamedWorking> Passes(ProcedureView view) =>
        view.Tool is { Geometry: var tool }
            ? from drawn in view.Drawn
            from pass in drawn.Joint.Passes
            let layout = PassLayout.Compute(pass, view.Revision.Content, tool)
            where !layout.IsRefused
            select new NamedWorking(Pass(drawn, pass), layout.Working)
            : [];

    private static IEnumerable<NamedWorking> Of(WindowFigures figures)
    {
        foreach (
            var (key, kinematics) in new[]
            {
                (Pitch, figures.AtSetPoint),
                (LeastPitch, figures.Least),
                (GreatestPitch, figures.Greatest),
            }
        )
        {
            if (!kinematics.IsRefused)
            {
                yield return new(key, kinematics.Working);
            }
        }

        if (figures.Energy is { IsRefused: false } energy)
        {
            yield return new(Energy, energy.Working);
        }

        if (figures.Heat is { IsRefused: false } heat)
        {
            yield return new(Heat, heat.Working);
        }

        if (figures.Ligament is { IsRefused: false } ligament)
        {
            yield return new(Ligament, ligament.Working);
        }
    }
}
