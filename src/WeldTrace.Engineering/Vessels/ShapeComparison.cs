using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>One shape of a <see cref="ShapeComparison"/>.</summary>
/// <param name="Name">Name in words.</param>
/// <param name="InsideDiameter">Inside diameter.</param>
/// <param name="CylinderLength">Length of the cylindrical part; zero for a sphere.</param>
/// <param name="Wall">Wall of the cylinder, or of the sphere.</param>
/// <param name="HeadWall">Wall of the half-sphere heads, or of the sphere.</param>
/// <param name="ShellMass">Mass of the bare shell without ports and bosses.</param>
public sealed record VesselShape(
    string Name,
    Length InsideDiameter,
    Length CylinderLength,
    Length Wall,
    Length HeadWall,
    Mass ShellMass
);

/// <summary>
/// Sphere and cylinder with half-sphere heads for one volume and pressure, each wall by the mean diameter forms
/// <c>e = P·Di/(2·f·z − P)</c> and <c>e = P·Di/(4·f·z − P)</c>, shell mass <c>ρ·π·(Dm·e·L + Dm²·e)</c> by exact shell volumes. Geometry; the thickness forms
/// are those of EN 13445-3 (read as quoted).
/// </summary>
public sealed record ShapeComparison : IWorked
{
    private ShapeComparison(VesselShape sphere, VesselShape cylinder, Working working) =>
        (Sphere, Cylinder, Working) = (sphere, cylinder, working);

    /// <summary>The sphere.</summary>
    public VesselShape Sphere { get; }

    /// <summary>The cylinder with half-sphere heads.</summary>
    public VesselShape Cylinder { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Compares the shapes.</summary>
    /// <param name="volume">Inner volume, above zero.</param>
    /// <param name="design">Pressure, allowable stress and joint factor; the radius of the case is that of the cylinder and must leave it some length.</param>
    /// <param name="kilogramsPerCubicMetre">Density of the wall in kg/m³, above zero.</param>
    public static Computed<ShapeComparison> Compute(
        Volume volume,
        DesignCase design,
        double kilogramsPerCubicMetre
    )
    {
        ArgumentNullException.ThrowIfNull(design);
        var radius = design.InsideRadius.Metres;
        var length = (volume.CubicMetres - BallOf(radius)) / (Math.PI * radius * radius);
        var check = Check(volume, design, kilogramsPerCubicMetre, length);
        if (!check.IsClean)
        {
            return check.Refused<ShapeComparison>();
        }

        var ball = design with
        {
            InsideRadius = Length.FromMetres(Math.Cbrt(volume.CubicMetres * 3 / (4 * Math.PI))),
        };
        var (wall, head, sphereWall) = (
            EnThickness.Cylinder(design),
            EnThickness.Sphere(design),
            EnThickness.Sphere(ball)
        );
        if (wall.IsRefused || head.IsRefused || sphereWall.IsRefused)
        {
            return Computed.Refused<ShapeComparison>([
                .. wall.Refusals,
                .. head.Refusals,
                .. sphereWall.Refusals,
            ]);
        }

        var sphere = Shape(
            "sphere",
            ball.InsideRadius,
            Length.Zero,
            sphereWall.Value,
            sphereWall.Value,
            kilogramsPerCubicMetre
        );
        var cylinder = Shape(
            "cylinder with half-sphere heads",
            design.InsideRadius,
            Length.FromMetres(length),
            wall.Value,
            head.Value,
            kilogramsPerCubicMetre
        );
        return Computed.Of(
            new ShapeComparison(
                sphere,
                cylinder,
                Show(volume, design, kilogramsPerCubicMetre, sphere, cylinder)
            )
        );
    }

    private static InputCheck Check(
        Volume volume,
        DesignCase design,
        double kilogramsPerCubicMetre,
        double length
    ) =>
        design
            .Check()
            .Positive("volume", volume.Litres, "l")
            .Positive("density", kilogramsPerCubicMetre, "kg/m³")
            .Require(
                length >= 0,
                RefusalReason.OutOfRange,
                "inside radius",
                "Half-spheres of this radius alone hold more than the volume.",
                "Choose a smaller radius for the cylinder."
            );

    private static double BallOf(double radius) => 4 * Math.PI / 3 * radius * radius * radius;

    private static VesselShape Shape(
        string name,
        Length radius,
        Length length,
        Length wall,
        Length headWall,
        double density
    )
    {
        var barrel = Math.PI * length.Metres * wall.Metres * ((2 * radius.Metres) + wall.Metres);
        var heads = BallOf(radius.Metres + headWall.Metres) - BallOf(radius.Metres);
        return new(
            name,
            radius * 2,
            length,
            wall,
            headWall,
            Mass.FromKilograms(density * (barrel + heads))
        );
    }

    private static Working Show(
        Volume volume,
        DesignCase design,
        double density,
        VesselShape sphere,
        VesselShape cylinder
    ) =>
        design
            .Begin(
                "Sphere and cylinder for one volume",
                "cylinder e = P·Di/(2·f·z − P); half-sphere and sphere e = P·Di/(4·f·z − P); Di = 2·R, f = S, z = E; mass = ρ·shell volume"
            )
            .Input("V", "volume", volume.Litres, "l")
            .Input("ρ", "density", density, "kg/m³")
            .Step("", "inside diameter of the sphere", sphere.InsideDiameter.Millimetres, "mm")
            .Step("L", "length of the cylindrical part", cylinder.CylinderLength.Millimetres, "mm")
            .Result("", "wall of the sphere", sphere.Wall.Millimetres, "mm")
            .Result("", "wall of the cylinder", cylinder.Wall.Millimetres, "mm")
            .Result("", "wall of its heads", cylinder.HeadWall.Millimetres, "mm")
            .Result("", "mass of the sphere", sphere.ShellMass.Kilograms, "kg")
            .Result("", "mass of the cylinder", cylinder.ShellMass.Kilograms, "kg")
            .From(
                "Geometry; thickness forms of EN 13445-3 read as quoted. Bare shells without ports, bosses and overlap."
            )
            .Build();
}
