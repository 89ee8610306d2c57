using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Procedures;

public sealed class ProcedureComparisonTests
{
    private static readonly ProcedureContent First = SampleProcedures.Content(SampleTools.Design());

    [Fact]
    public void Of_SameContent_ChangesNothing() =>
        Assert.DoesNotContain(ProcedureComparison.Of(First, First), l => l.IsChanged);

    [Fact]
    public void Of_ChangedWindowAndWords_TellsBothWithTheirWeight()
    {
        var second = First with
        {
            Windows =
            [
                .. First.Windows.Where(w => w.Parameter != WeldParameter.Torque),
                new(WeldParameter.TiltAngle, 2, 1.5m, 2.5m, "°", true),
            ],
            Details = new ProcedureDetails
            {
                Particulars = [new(ProcedureField.EdgePreparation, "milled", false)],
            },
        };

        var changed = ProcedureComparison.Of(First, second).Where(l => l.IsChanged).ToList();

        Assert.Equal(
            [
                ("Edge preparation", null, "milled", false),
                ("Torque", "18 N·m (14 to 22)", null, false),
                ("Tilt angle", null, "2 ° (1.5 to 2.5)", true),
            ],
            changed.Select(l => (l.Name, l.Left, l.Right, l.IsEssential))
        );
    }

    [Fact]
    public void Of_SameValueNowEssential_CountsAsChangedAndEssential()
    {
        var second = First with
        {
            Windows =
            [
                .. First.Windows.Select(w =>
                    w.Parameter == WeldParameter.Torque ? w with { IsEssential = true } : w
                ),
            ],
        };

        var line = Assert.Single(ProcedureComparison.Of(First, second), l => l.IsChanged);
        Assert.True(line.IsEssential);
    }

    [Fact]
    public void Of_ThickerJoint_IsEssential()
    {
        var second = First with { Thickness = Length.FromMillimetres(4) };

        var line = Assert.Single(ProcedureComparison.Of(First, second), l => l.IsChanged);
        Assert.Equal(
            ("Thickness", "3 mm", "4 mm", true),
            (line.Name, line.Left, line.Right, line.IsEssential)
        );
    }

    [Fact]
    public void Of_OtherToolAndMachine_ComparesTheirParticulars()
    {
        var machine = SampleMachines.Entered();
        Accept.All(
            machine.Describe(
                new MachineCapability(null, null, null, null),
                SamplePeople.Engineer,
                SampleTime.Start,
                new MachineNameplate("own make", "GW-60", "0417")
            )
        );
        var (tool, other) = (SampleTools.Design(), SampleTools.Design(pinMillimetres: 3.2));

        var changed = ProcedureComparison
            .Of(
                ProcedureLines.Of(First, new ProcedureObjects(tool, null)),
                ProcedureLines.Of(First, new ProcedureObjects(other, machine))
            )
            .Where(l => l.IsChanged)
            .Select(l => (l.Name, l.Left, l.Right, l.IsEssential));

        Assert.Equal(
            [
                ("Maker of the machine", null, "own make", false),
                ("Model of the machine", null, "GW-60", false),
                ("Serial number of the machine", null, "0417", false),
                ("Pin length", "3 mm", "3.2 mm", true),
            ],
            changed
        );
    }
}
