using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Concessions.Ask;
using WeldTrace.Web.Features.Concessions.Show;
using WeldTrace.Web.Features.Findings.ReportFinding;
using WeldTrace.Web.Features.Findings.ShowFinding;
using WeldTrace.Web.Features.Testing.RecordLeakTest;
using WeldTrace.Web.Features.Testing.ShowTest;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>
/// A vessel that did not go as planned, made through the handlers: welded by a concession, tested with the wrong gauge and again, and
/// repaired after that test.
/// </summary>
internal sealed class RepairedVessel(RoutedVessel vessel)
{
    public const string ConcessionReason =
        "Qualified at the other works; the papers are on their way.";
    public const string WithdrawalReason = "The gauge was that of another bench";
    public const string FindingText = "Cavity at the surface";
    public const string CauseText = "Cold start";
    public const string CloseNote = "Looked at again, sound";

    public RoutedVessel Routed => vessel;

    public required Guid Concession { get; init; }

    public required Guid WithdrawnTest { get; init; }

    public required Guid RepeatedTest { get; init; }

    public required Guid Finding { get; init; }

    public required Guid Repair { get; init; }

    public static async Task<RepairedVessel> MakeAsync(PostgresServerFixture server)
    {
        var vessel = await RoutedVessel.AtAsync(server, 10);
        await vessel.Site.EnterAsync(SamplePeople.Welders[0]);
        using WeldingHand hand = new(vessel);
        var concession = await WaiveAsync(vessel);
        await hand.WeldAsync(new(vessel.Serial, 10), 1);
        // The papers have come.
        await vessel.Site.Database.AddAsync(SampleCertificates.Welder(SamplePeople.Welders[0]));
        await hand.WeldAsync(new(vessel.Serial, 20), 2);
        var withdrawn = await TestAsync(vessel);
        Accept.All(
            await Signing(vessel)
                .WithdrawAsync(
                    withdrawn,
                    new() { Reason = WithdrawalReason, Password = WorkingSite.Password },
                    vessel.Inspector,
                    CancellationToken.None
                )
        );
        var repeated = await TestAsync(vessel);
        Accept.All(
            await Signing(vessel)
                .SignAsync(
                    repeated,
                    new() { Password = WorkingSite.Password },
                    vessel.Inspector,
                    CancellationToken.None
                )
        );
        var finding = await DecideAsync(vessel);
        var number = (await vessel.Site.ReadAsync<Finding>(finding)).Number;
        var repair = await hand.WeldAsync(new(vessel.Serial, 0, number), 2, Angle.FromDegrees(20));
        Accept.All(
            await Deciding(vessel)
                .CloseAsync(
                    finding,
                    new() { Note = CloseNote, Password = WorkingSite.Password },
                    vessel.Quality,
                    CancellationToken.None
                )
        );
        return new RepairedVessel(vessel)
        {
            Concession = concession,
            WithdrawnTest = withdrawn,
            RepeatedTest = repeated,
            Finding = finding,
            Repair = repair,
        };
    }

    /// <summary>The welder's certificate is not entered: two people let him weld all the same.</summary>
    private static async Task<Guid> WaiveAsync(RoutedVessel vessel)
    {
        var asked = Accept.Value(
            await new AskConcessionHandler(
                vessel.Site.Database,
                vessel.Site.Passwords,
                vessel.Site.Clock
            ).HandleAsync(
                vessel.Serial,
                10,
                "F4",
                new()
                {
                    Machine = vessel.Shop.Machine.Name,
                    Tool = vessel.Shop.Tool.Mark,
                    Welder = SamplePeople.Operator.PersonId,
                    Reason = ConcessionReason,
                    Password = WorkingSite.Password,
                },
                vessel.Engineer,
                CancellationToken.None
            )
        );
        Accept.All(
            await new ConcessionHandler(vessel.Site.Database, vessel.Site.Desk).GrantAsync(
                asked.Id,
                new() { Password = WorkingSite.Password },
                vessel.Quality,
                CancellationToken.None
            )
        );
        return asked.Id;
    }

    private static async Task<Guid> TestAsync(RoutedVessel vessel)
    {
        vessel.Site.Clock.Advance(TimeSpan.FromMinutes(30));
        var id = Guid.CreateVersion7(vessel.Site.Clock.GetUtcNow());
        Accept.All(
            await new RecordLeakTestHandler(
                vessel.Site.Database,
                vessel.Site.Passwords,
                vessel.Site.Arrivals,
                vessel.Site.Clock
            ).HandleAsync(
                vessel.Serial,
                30,
                LeakMethod.ImmersionBubble,
                new()
                {
                    Id = id,
                    GaugePressure = "2.00",
                    Liquid = "water",
                    DepthOfLiquid = "100",
                    AtmosphericPressure = "1013",
                    ObservedSeconds = "600",
                    Bubbles = "0",
                    BubbleDiameter = "1",
                    Gauge = "G-4",
                    CautionsRead = true,
                    Password = WorkingSite.Password,
                },
                vessel.Inspector,
                CancellationToken.None
            )
        );
        return id;
    }

    private static async Task<Guid> DecideAsync(RoutedVessel vessel)
    {
        vessel.Site.Clock.Advance(TimeSpan.FromMinutes(30));
        var form = new ReportFindingForm
        {
            Id = Guid.CreateVersion7(vessel.Site.Clock.GetUtcNow()),
            StepSequence = "20",
            Description = FindingText,
            JointCode = "J1",
            PassNumber = "2",
            Start = "90",
        };
        FindingActsHandler acts = new(vessel.Site.Desk);
        Accept.All(
            await new ReportFindingHandler(vessel.Site.Database, vessel.Site.Clock).HandleAsync(
                vessel.Serial,
                form,
                vessel.Inspector,
                CancellationToken.None
            ),
            await acts.StateCauseAsync(
                form.Id,
                new() { Type = "Cavity", Text = CauseText },
                vessel.Inspector,
                CancellationToken.None
            ),
            await acts.RecordBoardAsync(
                form.Id,
                new()
                {
                    Reference = "MRB-4",
                    Members = "Edda Lund",
                    Text = "Repair.",
                    Password = WorkingSite.Password,
                },
                vessel.Quality,
                CancellationToken.None
            ),
            await Deciding(vessel)
                .DecideAsync(
                    form.Id,
                    new()
                    {
                        Decision = "Repair",
                        Reason = "Mend it.",
                        Procedure = vessel.Shop.Procedure.Id,
                        Place = "J1/2",
                        Start = "85",
                        End = "105",
                        Password = WorkingSite.Password,
                    },
                    vessel.Quality,
                    CancellationToken.None
                )
        );
        return form.Id;
    }

    private static SignTestHandler Signing(RoutedVessel vessel) =>
        new(vessel.Site.Database, vessel.Site.Passwords, vessel.Site.Clock);

    private static DecideFindingHandler Deciding(RoutedVessel vessel) =>
        new(vessel.Site.Database, vessel.Site.Passwords, vessel.Site.Clock);
}
