using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.LogJudging;

/// <summary>Values of parameters in the units of the site.</summary>
public static class ParameterText
{
    /// <summary>The unit in which the site shows a parameter.</summary>
    public static Unit UnitOf(WeldParameter parameter, UnitSystem units) =>
        parameter switch
        {
            WeldParameter.SpindleSpeed => SiteUnit.For<RotationSpeed>(units),
            WeldParameter.TravelSpeed or WeldParameter.PlungeRate => SiteUnit.For<Speed>(units),
            WeldParameter.AxialForce => SiteUnit.For<Force>(units),
            WeldParameter.Torque => SiteUnit.For<Torque>(units),
            WeldParameter.PlungeDepth
            or WeldParameter.HeelPlungeDepth
            or WeldParameter.PenetrationLigament
            or WeldParameter.LateralOffset => SiteUnit.For<Length>(units),
            WeldParameter.TiltAngle or WeldParameter.SideTiltAngle => SiteUnit.For<Angle>(units),
            WeldParameter.ToolTemperature => SiteUnit.For<Temperature>(units),
            WeldParameter.DwellTime or WeldParameter.EndDwellTime or WeldParameter.RampTime =>
                UnitCatalogue.Get("s"),
            _ => throw new ArgumentOutOfRangeException(
                nameof(parameter),
                parameter,
                "Unknown parameter."
            ),
        };

    /// <summary>A measured value, to four digits, without its unit.</summary>
    public static string Measured(WeldParameter parameter, double si, UnitSystem units) =>
        SensibleDigits.Show(UnitOf(parameter, units).FromSi(si), 4);

    /// <summary>A set value or a limit, without its unit and without zeros at its end.</summary>
    public static string Stated(WeldParameter parameter, double si, UnitSystem units) =>
        SensibleDigits.Nominal(UnitOf(parameter, units).FromSi(si));
}
