using WeldTrace.Domain.Equipment;

namespace WeldTrace.TestSupport.Records;

public static class SampleMachines
{
    public static Machine Entered(string name = "Gantry 2") =>
        Accept.Value(
            Machine.Enter(
                name,
                "gantry with rotary table, 60 kN",
                "force",
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );
}
