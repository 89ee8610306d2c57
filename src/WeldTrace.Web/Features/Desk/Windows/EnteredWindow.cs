using WeldTrace.Engineering.Materials;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Features.Desk.Windows;

/// <summary>A parameter window as it was entered.</summary>
internal sealed record EnteredWindow(
    Alloy Alloy,
    Length Shoulder,
    Length Pin,
    RotationSpeed SpindleLow,
    RotationSpeed Spindle,
    RotationSpeed SpindleHigh,
    Speed TravelLow,
    Speed Travel,
    Speed TravelHigh,
    Length Thickness,
    Length PinLength,
    Length Heel
)
{
    /// <summary>Nobody welds more slowly; a smaller number is a wrong unit.</summary>
    private static readonly RotationSpeed SlowestSpindle = RotationSpeed.FromRevolutionsPerMinute(
        1
    );

    private static readonly Speed SlowestTravel = Speed.FromMillimetresPerMinute(0.1);

    public Torque? Torque { get; init; }

    public Pressure? YieldWhenHot { get; init; }

    /// <summary>The set point and the corners, each with its name.</summary>
    public IEnumerable<(string Name, RotationSpeed Spindle, Speed Travel)> Places =>
        [
            ("set point", Spindle, Travel),
            ("hottest corner", SpindleHigh, TravelLow),
            ("coldest corner", SpindleLow, TravelHigh),
            ("lower limits", SpindleLow, TravelLow),
            ("upper limits", SpindleHigh, TravelHigh),
        ];

    public static EnteredWindow Read(DeskEntries entries)
    {
        EnteredWindow window = new(
            AlloyLibrary.Find(entries.Option("alloy"))!,
            entries.Quantity<Length>("shoulder"),
            entries.Quantity<Length>("pin"),
            entries.Quantity<RotationSpeed>("spindlelow"),
            entries.Quantity<RotationSpeed>("spindle"),
            entries.Quantity<RotationSpeed>("spindlehigh"),
            entries.Quantity<Speed>("travellow"),
            entries.Quantity<Speed>("travel"),
            entries.Quantity<Speed>("travelhigh"),
            entries.Quantity<Length>("thickness"),
            entries.Quantity<Length>("pinlength"),
            entries.Quantity<Length>("heel")
        )
        {
            Torque = entries.OptionalQuantity<Torque>("torque"),
            YieldWhenHot = entries.OptionalQuantity<Pressure>("hotyield"),
        };
        if (entries.AreClean)
        {
            window.CheckOrder(entries);
        }

        return window;
    }

    private void CheckOrder(DeskEntries entries)
    {
        if (SpindleLow < SlowestSpindle)
        {
            entries.Refuse(
                "spindlelow",
                $"Spindle speed, lower limit: enter {entries.Show(SlowestSpindle, digits: 1)} or more."
            );
        }

        if (TravelLow < SlowestTravel)
        {
            entries.Refuse(
                "travellow",
                $"Travel speed, lower limit: enter {entries.Show(SlowestTravel, digits: 1)} or more."
            );
        }

        if (Spindle < SpindleLow || Spindle > SpindleHigh)
        {
            entries.Refuse(
                "spindle",
                "Spindle speed: the set point lies outside its limits; enter lower limit, set point and upper limit in rising order."
            );
        }

        if (Travel < TravelLow || Travel > TravelHigh)
        {
            entries.Refuse(
                "travel",
                "Travel speed: the set point lies outside its limits; enter lower limit, set point and upper limit in rising order."
            );
        }
    }
}
