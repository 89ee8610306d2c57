using WeldTrace.Engineering.Materials;

namespace WeldTrace.Engineering.Signals;

/// <summary>What has been published on telling defects from process signals; for explanation, not for acceptance.</summary>
public static class PublishedSignals
{
    private const string Feedback =
        "Boldsaikhan, Corwin, Logar, McGough, Arbegast: Detecting wormholes in friction stir welds from welding feedback data (abstract)";
    private const string Voids =
        "Du, Mukherjee, DebRoy 2019, npj Comput. Mater. 5:68 (abstract); 108 experiments, AA2024, AA2219, AA6061";
    private const string Bobbin = "Chen et al. 2016, J. Vibroengineering (abstract): nearly 2";

    /// <summary>All figures known here.</summary>
    public static IReadOnlyList<PublishedFigure> All { get; } =
    [
        Read(
            "detection by neural network on binned DFT of feedback, share of novel inputs recognised",
            0.95,
            Feedback
        ),
        Read("detection by phase-space analysis, accuracy", 0.81, Feedback),
        Read("void prediction from welding parameters alone, accuracy", 0.833, Voids),
        Read(
            "void prediction from variables of a rigorous numerical model, accuracy",
            0.966,
            Voids
        ),
        Read("bobbin tool: torque oscillation frequency / spindle frequency", 2, Bobbin),
    ];

    private static PublishedFigure Read(string subject, double value, string source) =>
        new(subject, value, value, "", Evidence.Read, source);
}
