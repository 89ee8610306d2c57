namespace WeldTrace.Engineering.Paths;

internal readonly record struct PlaneVector(double X, double Y)
{
    public double Dot(PlaneVector other) => (X * other.X) + (Y * other.Y);

    /// <summary>Cross product of a spin about z with a vector in the plane.</summary>
    public static PlaneVector CrossZ(double spin, PlaneVector r) => new(-spin * r.Y, spin * r.X);
}
