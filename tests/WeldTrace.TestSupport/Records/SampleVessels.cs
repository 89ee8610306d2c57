using WeldTrace.Domain.Material;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.TestSupport.Records;

public static class SampleVessels
{
    public static Vessel Planned(
        VesselDesign design,
        MaterialLot lot,
        string serial = "NR4-0001",
        string productionLot = "L26-03"
    ) =>
        Accept.Value(
            Vessel.Plan(
                serial,
                design,
                productionLot,
                [new Component("shell", serial + "-S", lot.Id, lot.Number, lot.CastNumber)],
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );
}
