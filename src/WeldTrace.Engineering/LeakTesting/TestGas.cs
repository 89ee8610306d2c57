namespace WeldTrace.Engineering.LeakTesting;

/// <summary>A gas with the properties that matter for leaks; viscosities at 20 °C from memory, molar masses from tables.</summary>
/// <param name="Name">Name of the gas.</param>
/// <param name="GramsPerMole">Molar mass in g/mol.</param>
/// <param name="MicropascalSeconds">Dynamic viscosity at 20 °C in µPa·s.</param>
public sealed record TestGas(string Name, double GramsPerMole, double MicropascalSeconds)
{
    /// <summary>Helium.</summary>
    public static TestGas Helium { get; } = new("helium", 4.002602, 19.6);

    /// <summary>Nitrogen.</summary>
    public static TestGas Nitrogen { get; } = new("nitrogen", 28.0134, 17.6);

    /// <summary>Air.</summary>
    public static TestGas Air { get; } = new("air", 28.9647, 18.2);

    /// <summary>Argon.</summary>
    public static TestGas Argon { get; } = new("argon", 39.948, 22.3);

    /// <summary>The gases known here.</summary>
    public static IReadOnlyList<TestGas> All { get; } = [Helium, Nitrogen, Air, Argon];
}
