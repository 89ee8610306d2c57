using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Web.Features.Desk.VesselSizing;

/// <summary>A vessel to be sized, as it was entered.</summary>
internal sealed record SizingTask(
    Volume Volume,
    Pressure Meop,
    Length Diameter,
    Length Wall,
    LadderFactors Factors,
    Pressure Allowable,
    double JointFactor,
    BurstMaterial Material,
    double Density,
    TimeSpan Hold
)
{
    public static SizingTask Read(DeskEntries entries)
    {
        var joint = entries.Number("joint");
        return new SizingTask(
            entries.Quantity<Volume>("volume"),
            entries.Quantity<Pressure>("meop"),
            entries.Quantity<Length>("diameter"),
            entries.Quantity<Length>("wall"),
            new LadderFactors(
                entries.Number("proof"),
                entries.Number("burst"),
                entries.Text("source"),
                entries.Number("correction")
            ),
            entries.Quantity<Pressure>("allowable"),
            joint,
            new BurstMaterial(
                entries.Quantity<Pressure>("yield"),
                entries.Quantity<Pressure>("ultimate"),
                entries.Number("hardening"),
                joint
            ),
            entries.Number("density"),
            entries.Time("hold", 60)
        );
    }

    public DesignCase DesignFor(Pressure pressure) =>
        new(pressure, Diameter / 2, Allowable, JointFactor);
}
