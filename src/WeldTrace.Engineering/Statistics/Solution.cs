namespace WeldTrace.Engineering.Statistics;

/// <summary>Result of an iterative solution.</summary>
/// <param name="Value">The value found.</param>
/// <param name="Iterations">Steps taken.</param>
/// <param name="Residual">What is left of the equation, or the relative width of the last interval.</param>
public sealed record Solution(double Value, int Iterations, double Residual);
