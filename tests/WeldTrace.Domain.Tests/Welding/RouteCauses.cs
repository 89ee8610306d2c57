using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>F1, F2, F3, F9, and F6 as far as the tool's state and life: everything on route, procedure and passes that forbids a run.</summary>
internal static class RouteCauses
{
    public static IReadOnlyList<GateCause> All { get; } =
    [
        Of("F1", "scrapped", "NR4-0001 is scrapped", "nothing more is welded"),
        Of("F1", "open finding", "F-00001", "decide and close"),
        Of("F1", "finding to be reworked at another step", "F-00001", "decide and close"),
        Of("F1", "run not signed", "run of step 10 isn't signed", "finish it first"),
        Of("F1", "earlier step not done", "Step 10 comes before step 20", "do it first"),
        Of("F1", "step done", "Step 10 is passed; step 20 comes next"),
        Of("F1", "route done", "The route of NR4-0001 is done"),
        Of("F2", "no revision", "WP-07 has no released revision", "must release one"),
        Of("F2", "draft", "WP-07 rev A is draft", "needs a released revision"),
        Of("F2", "trial", "WP-07 rev A is trial", "needs a released revision"),
        Of("F2", "qualified", "WP-07 rev A is qualified", "needs a released revision"),
        Of("F2", "superseded", "WP-07 rev A is superseded", "needs a released revision"),
        Of("F2", "withdrawn", "WP-07 rev A is withdrawn", "needs a released revision"),
        Of(
            "F2",
            "other procedure",
            "names procedure WP-07, not WP-99",
            "choose the released revision of WP-07"
        ),
        Of("F3", "other alloy", "vessel is 6082-T6", "qualified for 6061-T6"),
        Of("F3", "other temper", "vessel is 6061-T4", "qualified for 6061-T6"),
        Of("F3", "other thickness", "Joint J1 is 4 mm", "qualified for 3 mm"),
        Of("F3", "other joint type", "Joint J1 is a butt joint", "for lap joints"),
        Of("F6", "no tool", "No tool is chosen", "choose one"),
        Of("F6", "other tool design", "is of design TD-99 rev A", "asks for TD-15 rev A"),
        Of("F6", "tool held", "T-15-01 is held", "must be in service"),
        Of("F6", "tool retired", "T-15-01 is retired", "must be in service"),
        Of("F6", "life too short", "T-15-01 has 0.300 m left", "needs 0.406 m", "another tool"),
        Of("F9", "earlier pass missing", "Pass 1 of J1 has no signed run in the planned direction"),
    ];

    private static GateCause Of(string rule, string name, params string[] words) =>
        new(rule, name, words, () => With(name));

    private static WeldGateFacts With(string cause)
    {
        var shop = new SampleShop();
        var facts = shop.Facts();
        return cause switch
        {
            "no revision" => facts with { Revision = null },
            "draft" => facts with { Revision = SampleProcedures.Draft(shop.ToolDesign) },
            "trial" => facts with { Revision = SampleProcedures.OnTrial(shop.ToolDesign) },
            "qualified" => facts with { Revision = Qualified(shop.ToolDesign) },
            "superseded" => facts with { Revision = Superseded(shop) },
            "withdrawn" => facts with { Revision = Withdrawn(shop.Procedure) },
            "other procedure" => facts with
            {
                Revision = SampleProcedures.Released(shop.ToolDesign, "WP-99"),
            },
            "other alloy" => new SampleShop(
                design: SampleDesigns.Content() with
                {
                    Alloy = "6082",
                }
            ).Facts(),
            "other temper" => new SampleShop(
                design: SampleDesigns.Content() with
                {
                    Temper = "T4",
                }
            ).Facts(),
            "other thickness" => new SampleShop(
                design: Joints(j => j with { Thickness = Length.FromMillimetres(4) })
            ).Facts(),
            "other joint type" => new SampleShop(
                design: Joints(j => j with { JointType = "butt" })
            ).Facts(),
            "no tool" => facts with { Tool = null },
            "other tool design" => shop.Facts(
                10,
                SampleTools.InService(SampleTools.Design("TD-99"))
            ),
            "tool held" => After(
                shop,
                shop.Tool.Hold("Dropped.", SamplePeople.Operator, SampleTime.Start)
            ),
            "tool retired" => After(
                shop,
                shop.Tool.Retire(
                    RetirementReason.Breakage,
                    "Pin broke.",
                    SamplePeople.Operator,
                    SampleTime.Start
                )
            ),
            "life too short" => shop.Facts(10, Used(shop.Tool, 39.7)),
            "earlier pass missing" => EarlierPassMissing(shop),
            _ => OfTheRoute(shop, cause),
        };
    }

    private static WeldGateFacts OfTheRoute(SampleShop shop, string cause)
    {
        switch (cause)
        {
            case "scrapped":
                Accept.All(shop.Dispose(shop.Report(), DispositionKind.Scrap));
                return shop.Facts();
            case "open finding":
                shop.Report();
                return shop.Facts();
            case "finding to be reworked at another step":
                shop.Welded();
                Accept.All(shop.Dispose(shop.Report(10), DispositionKind.Rework));
                return shop.Facts(20);
            case "run not signed":
                shop.Ended();
                return shop.Facts();
            case "earlier step not done":
                return shop.Facts(20);
            case "step done":
                shop.Welded();
                return shop.Facts(10);
            case "route done":
                shop.Reach(70);
                return shop.Facts(10);
            default:
                throw new ArgumentOutOfRangeException(nameof(cause), cause, "Unknown cause.");
        }
    }

    private static DesignContent Joints(Func<Joint, Joint> change) =>
        SampleDesigns.Content() with
        {
            Joints = [.. SampleDesigns.Content().Joints.Select(change)],
        };

    private static ProcedureRevision Qualified(ToolDesign tool)
    {
        var revision = SampleProcedures.OnTrial(tool);
        var record = SampleQualifications.Signed(revision, tool).Record;
        Accept.All(revision.Qualify(record, SamplePeople.Engineer, SampleTime.Start));
        return revision;
    }

    // The next revision was released, and the vessel's step still holds the one before.
    private static ProcedureRevision Superseded(SampleShop shop)
    {
        var next = Accept.Value(
            shop.Procedure.Revise(2, "Wider window.", SamplePeople.Engineer, SampleTime.Start)
        );
        Accept.All(next.PutOnTrial(SamplePeople.Engineer, SampleTime.Start));
        var record = SampleQualifications.Signed(next, shop.ToolDesign).Record;
        SampleProcedures.Release(next, record, shop.Procedure);
        return shop.Procedure;
    }

    private static ProcedureRevision Withdrawn(ProcedureRevision revision)
    {
        Accept.All(
            revision.Withdraw("Hooks in the sections.", SamplePeople.Engineer, SampleTime.Start)
        );
        return revision;
    }

    private static WeldGateFacts After(SampleShop shop, Outcome done)
    {
        Accept.All(done);
        return shop.Facts();
    }

    private static Tool Used(Tool tool, double metres)
    {
        var (run, at) = (Guid.CreateVersion7(SampleTime.Start), SampleTime.Start);
        var length = Length.FromMetres(metres);
        tool.Charge(
            new ToolUse(run, "NR4-0000", length, ChargeBasis.ProcessLog, at, "J1"),
            SamplePeople.Operator
        );
        return tool;
    }

    // The step before was passed by a concession, not by a weld.
    private static WeldGateFacts EarlierPassMissing(SampleShop shop)
    {
        Accept.All(shop.Vessel.PassStep(10, SamplePeople.Operator, SampleTime.Start));
        return shop.Facts(20);
    }
}
