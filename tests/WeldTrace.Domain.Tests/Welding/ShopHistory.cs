using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

// One history: what people try, and what must hold of every run that came of it.
public sealed partial class ShopHistoryTests
{
    private sealed class History
    {
        private readonly SampleShop _shop = new(toolLifeMetres: 1.3);
        private bool _isToolHeld;
        private bool _isProcedureWithdrawn;
        private readonly ShopWaivers _waivers;

        public History(bool isWelded)
        {
            _waivers = new ShopWaivers(_shop);
            if (isWelded)
            {
                _shop.Welded(10);
            }
        }

        public int Started { get; private set; }

        public int Waived { get; private set; }

        public int Repaired { get; private set; }

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
                    run?.Sign(
                        _shop.Vessel,
                        SamplePeople.Operator,
                        _shop.Now,
                        _shop.Findings.Find(f => f.Id == run.Repair?.Finding.Id)
                    );
                    break;
                case Act.StartRepair:
                    TryRepair();
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

        // Decided as a repair and not yet welded, nothing open, nothing unsigned, the pass welded, and no third time without the board.
        private void TryRepair()
        {
            var wanted = _shop.Findings.Where(f =>
                f.Disposition?.Kind == DispositionKind.Repair && f.State == FindingState.Disposed
            );
            if (wanted.LastOrDefault() is not { } finding)
            {
                return;
            }

            var before = (
                Steps: _shop.Vessel.Steps,
                Left: 1.3 - _shop.Tool.Uses.Sum(u => u.Length.Metres),
                Open: _shop.Findings.Count(f => f.State == FindingState.Open),
                Unsigned: _shop.Runs.Count(r => r.SignedAt is null),
                IsRepaired: finding.Repair is not null,
                IsScrapped: _shop.Vessel.State == VesselState.Scrapped
            );
            var run = _shop.StartRepair(finding);
            Assert.Equal(before.Steps, _shop.Vessel.Steps);
            if (!run.IsAccepted)
            {
                return;
            }

            Repaired++;
            Assert.Equal((0, 0), (before.Open, before.Unsigned));
            Assert.False(before.IsRepaired || before.IsScrapped);
            Assert.False(_isToolHeld || _isProcedureWithdrawn);
            Assert.True(before.Left >= run.Value.PlannedPath.Metres - 1e-6);
            Assert.All(run.Value.Gate, v => Assert.Equal(RuleStanding.Holds, v.Standing));
            Assert.Contains(
                _shop.Runs,
                r =>
                    r.Repair is null
                    && r.PassNumber == run.Value.PassNumber
                    && r.SignedAt is not null
            );
            Assert.InRange(run.Value.Repair!.Attempt, 1, Finding.AttemptsWithoutBoard);
        }

        // An open finding holds everything; one to be reworked all that comes after its step.
        private static bool Holds(Finding finding, int sequence) =>
            finding.State == FindingState.Open
            || (
                finding.State == FindingState.Disposed
                && (
                    finding.Disposition!.Kind is DispositionKind.UseAsIs or DispositionKind.Scrap
                    || (
                        finding.Disposition.Kind == DispositionKind.Repair && finding.Repair is null
                    )
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
            else if (act is Act.UseAsIs or Act.Rework or Act.Repair or Act.Scrap)
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
