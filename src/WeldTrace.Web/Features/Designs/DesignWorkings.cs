using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Designs;

/// <summary>How the figures of a vessel design are worked out: its passes, its stresses, and what a pressure test of it stores.</summary>
public sealed class DesignWorkings(DesignReader reader) : IWorkings
{
    private const string LeastProofKey = "least-proof";
    private const string BurstKey = "burst";

    public string Kind => DesignFigures.Kind;

    public static string Stress(Guid design, int stage) =>
        Routes.Working(DesignFigures.Kind, design, StressKey(stage));

    public static string Margin(Guid design, int stage) =>
        Routes.Working(DesignFigures.Kind, design, MarginKey(stage));

    public static string Expansion(Guid design, int stage) =>
        Routes.Working(DesignFigures.Kind, design, ExpansionKey(stage));

    public static string LeastProof(Guid design) =>
        Routes.Working(DesignFigures.Kind, design, LeastProofKey);

    public static string Burst(Guid design) => Routes.Working(DesignFigures.Kind, design, BurstKey);

    public static string Pass(Guid design, string joint, int pass) =>
        Routes.Working(DesignFigures.Kind, design, PassKey(joint, pass));

    public async Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation) =>
        await reader.FindAsync(id, cancellation) is { } view
            ? new RecordWorkings(
                view.Design.Label,
                Routes.Design(id),
                [
                    .. view.Joints.SelectMany(Passes),
                    .. Stages(view.Design.Content),
                    .. Hazards(view.Design.Content),
                ]
            )
            : null;

    private static IEnumerable<NamedWorking> Passes(JointView joint) =>
        joint
            .Layouts.Where(l => !l.Layout.IsRefused)
            .Select(l => new NamedWorking(
                PassKey(joint.Joint.Code, l.Plan.Number),
                l.Layout.Working
            ));

    private static IEnumerable<NamedWorking> Stages(DesignContent content)
    {
        foreach (var (i, stage) in content.Pressures.Stages.Index())
        {
            var at = StagePrediction.Of(content, stage);
            yield return new(StressKey(i), at.Stress.Working);
            if (at.Margin is { } margin)
            {
                yield return new(MarginKey(i), margin.Working);
            }

            if (at.Expansion is { } expansion)
            {
                yield return new(ExpansionKey(i), expansion.Working);
            }
        }

        if (content.Pressures.Basis is { } basis)
        {
            yield return new(LeastProofKey, basis.LeastProof(content.Pressures).Working);
        }

        if (StagePrediction.Burst(content) is { } burst)
        {
            yield return new(BurstKey, burst.Working);
        }
    }

    private static IEnumerable<NamedWorking> Hazards(DesignContent content)
    {
        var plan = content.Pressures;
        return
        [
            .. Hazards(TestHazard.Of(content, plan.HighestOrdinary, !plan.IsLiquid), false),
            .. Hazards(TestHazard.Of(content, plan.LeakTestPressure, true), true),
        ];
    }

    private static IEnumerable<NamedWorking> Hazards(TestHazard? hazard, bool isLeakTest) =>
        (hazard?.Workings ?? []).Select(
            (w, i) => new NamedWorking(DesignFigures.HazardKey(isLeakTest, i), w)
        );

    private static string PassKey(string joint, int pass) =>
        FormattableString.Invariant($"pass-{joint}-{pass}");

    private static string StressKey(int stage) =>
        FormattableString.Invariant($"stress-{stage + 1}");

    private static string MarginKey(int stage) =>
        FormattableString.Invariant($"margin-{stage + 1}");

    private static string ExpansionKey(int stage) =>
        FormattableString.Invariant($"expansion-{stage + 1}");
}
