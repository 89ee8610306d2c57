using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.Engineering.Tests.Signals;

/// <summary>Common practice, no source. Hand-made runs at 10 Hz: force in kN, depth in mm, speed in mm/min, number of samples.</summary>
public sealed class PhaseSegmentationTests
{
    private static readonly Step Air = new(0, -5, 0, 10);
    private static readonly Step Plunge = new(5, 2, 0, 20);
    private static readonly Step Dwell = new(10, 4, 0, 30);
    private static readonly Step Weld = new(8, 4, 200, 100);
    private static readonly Step EndDwell = new(8, 4, 0, 10);
    private static readonly Step Rise = new(3, 2, 0, 10);

    [Fact]
    public void Complete_WholeRun_GivesEachPhaseOnce()
    {
        var phases = Run(Air, Plunge, Dwell, Weld, EndDwell, Rise, Air);

        Assert.Equal(
            [
                (WeldPhase.Idle, 10),
                (WeldPhase.Plunge, 20),
                (WeldPhase.Dwell, 30),
                (WeldPhase.Traverse, 100),
                (WeldPhase.Exit, 20),
                (WeldPhase.Idle, 10),
            ],
            phases.Spans.Select(span => (span.Phase, (int)span.SampleCount))
        );
        Assert.Equal(170, phases.Passes[0].RetractStart!.Value.Index);
    }

    [Fact]
    public void Complete_LogEndsInTraverse_TraverseRunsToTheEnd()
    {
        var phases = Run(Air, Plunge, Dwell, Weld);

        Assert.Equal(
            (WeldPhase.Traverse, 160L),
            (phases.Spans[^1].Phase, phases.Spans[^1].Next.Index)
        );
        Assert.Null(phases.Passes[0].ToolFree);
        Assert.Equal(159, phases.Passes[0].TraverseEnd!.Value.Index);
    }

    [Fact]
    public void Complete_PauseWithToolInWork_StaysOneTraverse()
    {
        var phases = Run(Air, Plunge, Dwell, Weld, EndDwell, Weld, EndDwell, Rise, Air);

        var traverse = Assert.Single(phases.Spans, span => span.Phase == WeldPhase.Traverse);
        Assert.Equal(210, traverse.SampleCount);
    }

    [Fact]
    public void Complete_RestartAfterRetract_GivesTwoPasses()
    {
        var phases = Run(Air, Plunge, Dwell, Weld, Rise, Air, Plunge, Dwell, Weld, Rise, Air);

        Assert.Equal(2, phases.Passes.Count);
        Assert.Equal(2, phases.Spans.Count(span => span.Phase == WeldPhase.Traverse));
    }

    [Fact]
    public void Complete_TouchBeforeTheRun_IsIdle()
    {
        var touch = new Step(1, 0, 0, 3);
        var phases = Run(Air, touch, Air, Plunge, Dwell, Weld, Rise, Air);

        Assert.Equal((WeldPhase.Idle, 23L), (phases.Spans[0].Phase, phases.Spans[0].SampleCount));
        Assert.Single(phases.Passes);
    }

    [Fact]
    public void Complete_AbortedBeforeTravel_HasPlungeDwellAndExitOnly()
    {
        var phases = Run(Air, Plunge, Dwell, Rise, Air);

        Assert.False(phases.HasTraverse);
        Assert.Equal(
            [WeldPhase.Idle, WeldPhase.Plunge, WeldPhase.Dwell, WeldPhase.Exit, WeldPhase.Idle],
            phases.Spans.Select(span => span.Phase)
        );
    }

    [Fact]
    public void Complete_RapidMoveInAir_IsNoTraverse()
    {
        var rapid = new Step(0, -50, 3000, 50);
        var phases = Run(rapid, Air, Plunge, Dwell, Weld, EndDwell, Rise, Air, rapid);

        var traverse = Assert.Single(phases.Spans, span => span.Phase == WeldPhase.Traverse);
        Assert.Equal(100, traverse.SampleCount);
    }

    [Fact]
    public void Complete_JogDuringDwell_DoesNotStartTheTraverse()
    {
        var jog = new Step(8, 4, 50, 3);
        var phases = Run(Air, Plunge, Dwell, jog, Dwell, Weld, Rise, Air);

        Assert.Equal(93, phases.Passes[0].TraverseStart!.Value.Index);
    }

    [Fact]
    public void Complete_ForceControlSinksDuringWeld_DwellStaysBeforeTravel()
    {
        var sinking = Enumerable.Range(0, 50).Select(i => new Step(8, 4 + (i * 0.01), 200, 2));
        var phases = Run([
            Air,
            Plunge,
            Dwell,
            .. sinking,
            EndDwell with
            {
                Depth = 4.49,
            },
            Rise,
            Air,
        ]);

        Assert.Equal(30, phases.Passes[0].DwellStart!.Value.Index);
        Assert.Equal(
            100,
            phases.Spans.Single(span => span.Phase == WeldPhase.Traverse).SampleCount
        );
    }

    [Fact]
    public void Complete_NoDepthLogged_FindsTraverseWithoutDwell()
    {
        var phases = Run([
            .. new[] { Air, Plunge, Dwell, Weld, EndDwell, Air }.Select(step =>
                step with
                {
                    Depth = double.NaN,
                }
            ),
        ]);

        Assert.Equal(
            [WeldPhase.Idle, WeldPhase.Plunge, WeldPhase.Traverse, WeldPhase.Exit, WeldPhase.Idle],
            phases.Spans.Select(span => span.Phase)
        );
    }

    [Fact]
    public void Complete_NoForceLogged_TakesContactFromDepth()
    {
        var phases = Run([
            .. new[] { Air, Plunge, Dwell, Weld, EndDwell, Rise, Air }.Select(step =>
                step with
                {
                    Force = double.NaN,
                }
            ),
        ]);

        Assert.Equal(
            100,
            phases.Spans.Single(span => span.Phase == WeldPhase.Traverse).SampleCount
        );
        Assert.Equal(10, phases.Passes[0].Contact.Index);
    }

    [Fact]
    public void Complete_NoSpeedLogged_TravelsAfterTheProgrammedDwell()
    {
        var steps = new[] { Air, Plunge, Dwell, Weld, Rise, Air };
        var phases = Run([.. steps.Select(step => step with { Speed = double.NaN })]);

        Assert.Equal(30 + 20, phases.Passes[0].TraverseStart!.Value.Index);
        Assert.Equal(159, phases.Passes[0].TraverseEnd!.Value.Index);
    }

    [Fact]
    public void Complete_NoSamples_HasNoPhases() => Assert.Empty(Run().Spans);

    [Fact]
    public void SteadyTraverse_SlowEnd_CutsNoMoreThanTheLongestRamp()
    {
        var slow = new Step(8, 4, 100, 200);
        var phases = Run(Air, Plunge, Dwell, Weld, slow, Rise, Air);

        var (from, to) = phases.Passes[0].SteadyTraverse(TimeSpan.FromSeconds(5));
        Assert.Equal(6.0, from, 1e-9);
        Assert.Equal(35.9 - 5, to, 1e-9);
    }

    private static RunPhases Run(params IEnumerable<Step> steps)
    {
        var segmentation = new PhaseSegmentation(
            new PhaseThresholds { SteadySpeed = Speed.FromMillimetresPerMinute(190) }
        );
        var sample = 0;
        foreach (var step in steps)
        {
            for (var i = 0; i < step.Samples; i++)
            {
                segmentation.Add(
                    new ToolSample(
                        sample++ / 10.0,
                        step.Force * 1e3,
                        step.Depth * 1e-3,
                        Speed.FromMillimetresPerMinute(1).MetresPerSecond * step.Speed
                    )
                );
            }
        }

        return segmentation.Complete();
    }

    private sealed record Step(double Force, double Depth, double Speed, int Samples);
}
