using CsCheck;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>
/// Whatever people try, in whatever order: no run exists that a rule of the floor forbade. The rules are told here again from what
/// the random history did, without asking the gate.
/// </summary>
public sealed class ShopHistoryTests
{
    private enum Act
    {
        Start,
        StartSecond,
        StartByInspector,
        End,
        Interrupt,
        Log,
        LogWithExcursion,
        ShortLog,
        Sign,
        Report,
        UseAsIs,
        Rework,
        Scrap,
        Close,
        HoldTool,
        ServeTool,
        WithdrawProcedure,
        Revoke,
        Certify,
        Doubt,
        Clear,
        AskForWelder,
        AskForMachine,
        Grant,
        Decline,
    }

    /// <summary>What is tried, the acts of an ordinary day more often.</summary>
    private static readonly Act[] Often =
    [
        .. Enum.GetValues<Act>(),
        .. Enumerable
            .Repeat<Act[]>([Act.Start, Act.StartSecond, Act.End, Act.Log, Act.Sign], 8)
            .SelectMany(a => a),
        .. Enumerable.Repeat<Act[]>([Act.UseAsIs, Act.Rework, Act.Close], 3).SelectMany(a => a),
        .. Enumerable.Repeat<Act[]>([Act.Certify, Act.Clear], 3).SelectMany(a => a),
    ];

    /// <summary>Days on which certificates and the machine fail, and people ask for concessions.</summary>
    private static readonly Act[] OfWaivers =
    [
        Act.Start,
        Act.StartSecond,
        Act.End,
        Act.Log,
        Act.Sign,
        Act.Revoke,
        Act.Certify,
        Act.Doubt,
        Act.Clear,
        Act.AskForWelder,
        Act.AskForMachine,
        Act.Grant,
        Act.Decline,
    ];

    // The histories do weld: a property over nothing would hold as well.
    [Fact]
    public void RandomHistories_HoldNoRunThatARuleForbade() =>
        Assert.InRange(Sample(Often, 3000).Started, 1500, int.MaxValue);

    [Fact]
    public void RandomHistoriesOfWaivers_HoldNoRunWithoutItsTwoSignatures() =>
        Assert.InRange(Sample(OfWaivers, 2000).Waived, 100, int.MaxValue);

    private static (int Started, int Waived) Sample(Act[] from, int histories)
    {
        var (started, waived) = (0, 0);
        Gen.Int[0, from.Length - 1]
            .Select(i => from[i])
            .Array[5, 60]
            .Sample(
                acts =>
                {
                    var history = new History();
                    foreach (var act in acts)
                    {
                        history.Try(act);
                    }

                    started += history.Started;
                    waived += history.Waived;
                },
                iter: histories,
                threads: 1
            );
        return (started, waived);
    }

    private sealed class History
    {
        private readonly SampleShop _shop = new(toolLifeMetres: 1.3);
        private bool _isToolHeld;
        private bool _isProcedureWithdrawn;
        private readonly ShopWaivers _waivers;

        public History() => _waivers = new ShopWaivers(_shop);

        public int Started { get; private set; }

        public int Waived { get; private set; }

        public void Try(Act act)
        {
            var run = _shop.Runs.LastOrDefault();
            switch (act)
            {
                case Act.Start or Act.StartSecond:
                    TryStart(act == Act.Start ? 10 : 20);
                    break;
                case Act.StartByInspector:
                    Assert.False(_shop.Start(10, SamplePeople.Inspector).IsAccepted);
                    break;
                case Act.End:
                    run?.End(null, _shop.Tool, SamplePeople.Operator, _shop.Now);
                    break;
                case Act.Interrupt when run is { State: WeldRunState.Running }:
                    Opened(
                        run.Interrupt(
                            run.PlannedPath * 0.5,
                            "Alarm.",
                            _shop.Vessel,
                            _shop.Tool,
                            SamplePeople.Operator,
                            _shop.Now
                        ).Value
                    );
                    break;
                case Act.Log or Act.LogWithExcursion or Act.ShortLog when run is not null:
                    _shop.TakeLog(run, LogOf(act, run));
                    break;
                case Act.Sign:
                    run?.Sign(_shop.Vessel, SamplePeople.Operator, _shop.Now);
                    break;
                case Act.WithdrawProcedure:
                    _isProcedureWithdrawn |= _shop
                        .Procedure.Withdraw("Hooks.", SamplePeople.Engineer, _shop.Now)
                        .IsAccepted;
                    break;
                case Act.HoldTool:
                    _isToolHeld |= _shop
                        .Tool.Hold("Dropped.", SamplePeople.Operator, _shop.Now)
                        .IsAccepted;
                    break;
                case Act.ServeTool:
                    _isToolHeld &= !_shop
                        .Tool.PutInService(SamplePeople.Engineer, _shop.Now)
                        .IsAccepted;
                    break;
                default:
                    if (!_waivers.Try(act.ToString()))
                    {
                        TryOnFindings(act);
                    }

                    break;
            }
        }

        private void TryStart(int sequence)
        {
            var before = (
                Steps: _shop.Vessel.Steps,
                Left: 1.3 - _shop.Tool.Uses.Sum(u => u.Length.Metres),
                Holding: _shop.Findings.Count(f => Holds(f, sequence)),
                Unsigned: _shop.Runs.Count(r => r.SignedAt is null),
                IsScrapped: _shop.Vessel.State == VesselState.Scrapped
            );
            var run = _shop.Start(sequence);
            if (!run.IsAccepted)
            {
                Assert.Equal(before.Steps, _shop.Vessel.Steps);
                return;
            }

            Started++;
            Waived += _waivers.UseFor(run.Value);
            Assert.Equal(0, before.Holding);
            Assert.Equal(0, before.Unsigned);
            Assert.False(before.IsScrapped);
            Assert.False(_isToolHeld);
            Assert.False(_isProcedureWithdrawn);
            Assert.True(before.Left >= run.Value.PlannedPath.Metres - 1e-6);
            Assert.Equal(
                sequence,
                before
                    .Steps.First(s => s.State is not (StepState.Passed or StepState.Waived))
                    .Sequence
            );
            Assert.True(
                sequence == 10 || _shop.Runs.Any(r => r.PassNumber == 1 && r.SignedAt is not null)
            );
        }

        // An open finding holds everything; one to be reworked all that comes after its step.
        private static bool Holds(Finding finding, int sequence) =>
            finding.State == FindingState.Open
            || (
                finding.State == FindingState.Disposed
                && (
                    finding.Disposition!.Kind is DispositionKind.UseAsIs or DispositionKind.Scrap
                    || sequence > finding.StepSequence
                )
            );

        private void TryOnFindings(Act act)
        {
            if (act == Act.Report && !_shop.Vessel.IsFinal)
            {
                _shop.Report();
            }

            if (
                _shop.Findings.LastOrDefault(f => f.State != FindingState.Closed) is not { } finding
            )
            {
                return;
            }

            if (act == Act.Close)
            {
                _shop.Close(finding);
            }
            else if (act is Act.UseAsIs or Act.Rework or Act.Scrap)
            {
                _shop.Dispose(finding, Enum.Parse<DispositionKind>(act.ToString()));
            }
        }

        private void Opened(Finding? finding)
        {
            if (finding is not null)
            {
                finding.GiveNumber(_shop.Findings.Count + 1);
                _shop.Findings.Add(finding);
            }
        }

        private static LogSummary LogOf(Act act, WeldRun run) =>
            act switch
            {
                Act.LogWithExcursion => SampleRunLogs.Of(run, SampleRunLogs.Excursion),
                Act.ShortLog => SampleRunLogs.Travelled(run.PlannedPath * 0.4, run),
                _ => SampleRunLogs.Of(run),
            };
    }
}
