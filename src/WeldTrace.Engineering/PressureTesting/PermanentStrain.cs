using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using static WeldTrace.Engineering.Statistics.StandardUncertainty;

namespace WeldTrace.Engineering.PressureTesting;

/// <summary>A strain read before pressure and after the return to zero.</summary>
/// <param name="Name">Which gauge and direction, in words.</param>
/// <param name="Before">Before pressure, in µm/m; gauges seldom read zero then.</param>
/// <param name="After">After the return to zero, in µm/m.</param>
/// <param name="StandardUncertainty">Standard uncertainty of one reading, in µm/m, above zero.</param>
/// <param name="Over">Length that the strain stands for, above zero: the diameter for a gauge round the shell.</param>
/// <param name="AllowedSet">Largest allowed set, in a unit of length.</param>
public sealed record StrainMeasurement(
    string Name,
    double Before,
    double After,
    double StandardUncertainty,
    Length Over,
    WrittenLimit AllowedSet
);

/// <summary>
/// Permanent set found by strain, <c>set = (after − before)·L</c>: the strain is taken as even over the length. Its magnitude is judged.
/// Definition of strain; no source needed.
/// </summary>
public sealed record PermanentStrain : IWorked
{
    private const double PerMicro = 1e-6;

    private PermanentStrain(StrainMeasurement strain)
    {
        Strain = strain;
        Set = strain.Over * ((strain.After - strain.Before) * PerMicro);
        ExpandedUncertainty =
            strain.Over * (CoverageFactor * Math.Sqrt(2) * strain.StandardUncertainty * PerMicro);
        Judgement = Comparison.AtMost(
            new(Math.Abs(Set.Metres), "m", ExpandedUncertainty.Metres),
            strain.AllowedSet
        );
        Working = Working
            .Of($"Permanent set by {strain.Name}", "set = (after − before)·L; U = 2·√2·u·L")
            .Input("", "strain before", strain.Before, "µm/m")
            .Input("", "strain after the return to zero", strain.After, "µm/m")
            .Input("u", "standard uncertainty of one reading", strain.StandardUncertainty, "µm/m")
            .Input("L", "length that the strain stands for", strain.Over.Millimetres, "mm")
            .Step("", "strain that stayed", strain.After - strain.Before, "µm/m")
            .Result("set", "permanent set", Set.Millimetres, "mm")
            .Result("U", "expanded uncertainty, k = 2", ExpandedUncertainty.Millimetres, "mm")
            .From("Definition of strain, even over L; uncertainty by propagation (GUM).")
            .Build();
    }

    /// <summary>What was read.</summary>
    public StrainMeasurement Strain { get; }

    /// <summary>Change of the length; positive for growth.</summary>
    public Length Set { get; }

    /// <summary>Expanded uncertainty of the set, coverage factor 2.</summary>
    public Length ExpandedUncertainty { get; }

    /// <summary>Judgement of the magnitude of the set.</summary>
    public Judgement Judgement { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Evaluates a strain.</summary>
    public static Computed<PermanentStrain> Evaluate(StrainMeasurement strain)
    {
        ArgumentNullException.ThrowIfNull(strain);
        return new InputCheck()
            .Sensible($"strain of {strain.Name}", [strain.Before, strain.After])
            .Positive("uncertainty of the strain", strain.StandardUncertainty, "µm/m")
            .Positive("length of the strain", strain.Over.Millimetres, "mm")
            .LimitOf("allowed set", strain.AllowedSet, Units.Dimension.Length, "in mm, µm or in")
            .Compute(() => new PermanentStrain(strain));
    }
}
