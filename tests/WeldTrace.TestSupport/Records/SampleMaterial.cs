using WeldTrace.Domain.Material;

namespace WeldTrace.TestSupport.Records;

public static class SampleMaterial
{
    public static MaterialLot Lot(string number = "ML-118") =>
        Accept.Value(
            MaterialLot.Enter(
                number,
                "6061",
                "T6",
                "C-40912",
                "extruded tube",
                "3.1-55120",
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );
}
